package chinelog.audit;

/**
 * Something that must not be there, or that could not be searched.
 *
 * @param file below the edition's folder
 * @param where in the file, in words
 * @param what was found, in words the maker understands
 */
public record Finding(String file, String where, String what) {}
