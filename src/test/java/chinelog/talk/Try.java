package chinelog.talk;
import java.util.*;
class Try { public static void main(String[] a){ for (String l: new String[]{"en-GB","de","nl","fr","es"}) { Speech s=new Speech(Locale.forLanguageTag(l)); boolean c=!l.startsWith("en");
 for (String t: new String[]{"700 mm","11.20\u202fm","3/16 in","1 3/16\u202fin","1/2 in","2 1/2 in","1:16","± 0.5 mm","20 × 30 mm","10–12 mm","£21.60","34 GBP/h","12.40 €","2 h 30 min","18:30","18:00-21:10","09:05","2026-04-02","1 h","21 h","120 g/m²","0.005 in","1 200 g","1,250 g","12,500 g","5 %","20 °C","-3 mm","1.5 Ah","9\u202fkn","12 strips","1 plank","T20_0430","1/64 in","3/4 in","½ in","1¼ in","700 in April","0.05 mm","101 g"}) {
  String w=c? t.replace(".", "\1").replace(",",".").replace("\1",","):t; System.out.print(w+" => "+s.say(w)+" | "); }
 System.out.println();
 for (String t: Map.of("en-GB",List.of("14 March 2026","Use approx. 5 mm, e.g. no. 3 etc. Then stop.","It was no. He left."),"de",List.of("am 14. März 2026","14. März 2026","ca. 5 mm, z. B. Nr. 3 usw."),"nl",List.of("14 maart 2026","bijv. 5 mm"),"fr",List.of("1er mars 2026","14 mars 2026"),"es",List.of("14 de marzo de 2026","p. ej. 5 mm")).get(l)) System.out.print(t+" => "+s.say(t)+" | ");
 System.out.println("\n");
}}}
