#!/bin/sh
# Keeps what Java works out when it loads chinelog's classes (class-data sharing), so that it starts faster:
#   quick-start.sh HOME JAVA ARCHIVE
# Checks and publishes the sample log to learn which classes that takes, with one photograph in the place of all,
# since it is the photographs that take time; whatever that finds wrong. A lambda kept for an interface of picocli,
# which is compiled for Java 5, would keep that interface and all that implements it out. If no archive can be made,
# an empty one is left, which the launcher passes over.
home=$1 java=$2 archive=$3
mkdir -p "$(dirname -- "$archive")" || exit 1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
chinelog() {
  list=$1
  shift
  "$java" -XX:DumpLoadedClassList="$work/$list" -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Xlog:disable \
    -Djava.awt.headless=true -jar "$home/target/chinelog.jar" "$@"
}
{
  cp -r "$home/sample-log" "$work/log" &&
  rm -rf "$work/log/.chinelog" "$work/log/published" "$work/log/photos/photos.yaml" &&
  find "$work/log/photos" -name '*.jpg' -exec cp "$home/sample-log/photos/DSV_1093.jpg" {} \; &&
  { chinelog of-publish publish "$work/log" --for workshop || :; } &&
  { chinelog of-check check "$work/log" || :; } &&
  awk '/^@lambda-proxy .*picocli/ { next } !seen[$0]++' "$work/of-check" "$work/of-publish" >"$work/classes" &&
  "$java" -Xshare:dump -XX:SharedClassListFile="$work/classes" -XX:SharedArchiveFile="$work/archive" \
    -XX:+UseSerialGC -cp "$home/target/chinelog.jar"
} >/dev/null 2>&1 && mv -f "$work/archive" "$archive" && touch "$archive" && exit 0
: >"$archive"
exit 1
