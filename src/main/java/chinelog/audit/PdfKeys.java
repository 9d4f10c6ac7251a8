package chinelog.audit;

import java.util.Set;

/** What a PDF of ours may hold (ISO 32000-1; keys that PDF/UA-1 and PDF/A-2a books need). */
final class PdfKeys {

  /** Keys of any dictionary, resources and name trees apart. */
  static final Set<String> ANYWHERE =
      words(
          // Document, pages, outline
          "Type Subtype Version Pages Kids Count Parent Outlines First Last Next Prev Title Dest D SE"
              + " Limits Nums Names Dests PageLabels P S St PageMode PageLayout ViewerPreferences"
              + " DisplayDocTitle Direction Duplex PrintScaling NumCopies Lang MarkInfo Marked"
              + " Suspects StructTreeRoot Metadata OutputIntents OutputConditionIdentifier"
              + " OutputCondition RegistryName Info DestOutputProfile Root ID Size Index W"
              + " MediaBox CropBox BleedBox TrimBox ArtBox Rotate Resources Contents Annots"
              + " StructParents StructParent Tabs Group CS I K C F"
              // Links
              + " Rect Border A URI IsMap H BS QuadPoints Contents"
              // Tags
              + " RoleMap ClassMap ParentTree ParentTreeNextKey IDTree Pg Obj MCID Stm StmOwn Alt"
              + " ActualText E T R O Scope ColSpan RowSpan Headers ListNumbering Placement WritingMode"
              + " BBox Width Height SpaceBefore SpaceAfter TextAlign BlockAlign InlineAlign Summary"
              + " NS Namespaces"
              // Resources
              + " Font XObject ExtGState ColorSpace Pattern Shading Properties ProcSet"
              // Streams and pictures
              + " Length Filter DecodeParms Predictor Colors Columns BitsPerComponent Matrix"
              + " FormType Interpolate Decode ImageMask Mask SMask SMaskInData Intent N Extends"
              + " ColorTransform Matte"
              // Graphics state, shadings
              + " CA ca BM AIS SA OP op OPM LW LC LJ ML D RI FL SM TK G BC TR"
              + " ShadingType Coords Domain Function Functions Bounds Encode FunctionType C0 C1"
              + " Extend Background PatternType PaintType TilingType XStep YStep Range BitsPerSample"
              + " Order AntiAlias Alternate"
              // Fonts
              + " BaseFont Encoding ToUnicode DescendantFonts CIDSystemInfo Registry Ordering"
              + " Supplement FontDescriptor FontName FontFamily FontStretch FontWeight Flags FontBBox"
              + " ItalicAngle Ascent Descent Leading CapHeight XHeight StemV StemH AvgWidth MaxWidth"
              + " MissingWidth FontFile2 FontFile3 Length1 Length2 Length3 CIDToGIDMap CIDSet DW"
              + " DW2 W2 Widths FirstChar LastChar Differences BaseEncoding CharSet WMode UseCMap"
              // Document information
              + " Author Subject Keywords Creator Producer CreationDate ModDate Trapped"
              + " description");

  /** Keys whose dictionaries have names of their own for keys. */
  static final Set<String> NAMED =
      words(
          "Font XObject ExtGState ColorSpace Pattern Shading Properties RoleMap ClassMap Dests"
              + " Namespaces");

  static final Set<String> CATALOG =
      words(
          "Type Version Pages Outlines PageLabels Names Dests PageMode PageLayout ViewerPreferences"
              + " Lang MarkInfo StructTreeRoot Metadata OutputIntents");

  static final Set<String> NAME_TREES = words("Dests");

  static final Set<String> INFORMATION =
      words(
          "Title Author Subject Keywords Creator Producer CreationDate ModDate Trapped description");

  static final Set<String> FILTERS = words("FlateDecode DCTDecode");

  private PdfKeys() {}

  private static Set<String> words(String list) {
    return Set.copyOf(java.util.Arrays.asList(list.split(" ")));
  }
}
