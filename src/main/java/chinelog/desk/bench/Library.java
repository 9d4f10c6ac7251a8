package chinelog.desk.bench;

import java.util.List;

/**
 * A library of scripts that comes as a WebJar of its own: an ES module, taken as it was published.
 *
 * @param module as other scripts import it, such as {@code @codemirror/view}
 * @param name of its WebJar
 * @param version of its WebJar, the same as in pom.xml
 * @param file in it
 */
record Library(String module, String name, String version, String file) {

  static final List<Library> ALL =
      List.of(
          new Library("@codemirror/state", "codemirror__state", "6.7.1", "dist/index.js"),
          new Library("@codemirror/view", "codemirror__view", "6.43.7", "dist/index.js"),
          new Library("@codemirror/commands", "codemirror__commands", "6.10.4", "dist/index.js"),
          new Library("@codemirror/language", "codemirror__language", "6.12.4", "dist/index.js"),
          new Library("@lezer/common", "lezer__common", "1.5.2", "dist/index.js"),
          new Library("@lezer/highlight", "lezer__highlight", "1.2.3", "dist/index.js"),
          new Library("style-mod", "style-mod", "4.1.3", "src/style-mod.js"),
          new Library("w3c-keyname", "w3c-keyname", "2.2.8", "index.js"),
          new Library("crelt", "crelt", "1.0.7", "index.js"),
          new Library(
              "@marijn/find-cluster-break", "marijn__find-cluster-break", "1.0.3", "src/index.js"));

  /** Where it lies on the class path. */
  String resource() {
    return "/META-INF/resources/webjars/" + name + "/" + version + "/" + file;
  }

  /** What the HTML standard calls an import map: where scripts find these modules. */
  static String importMap(String own) {
    StringBuilder map = new StringBuilder("{\"imports\": {");
    for (Library library : ALL) {
      map.append(map.charAt(map.length() - 1) == '{' ? "" : ", ")
          .append('"')
          .append(library.module)
          .append("\": \"")
          .append(own)
          .append("lib/")
          .append(library.name)
          .append(".js\"");
    }
    return map.append("}}").toString();
  }
}
