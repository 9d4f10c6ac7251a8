#!/bin/sh
# Keeps what Java works out when it loads chinelog's classes (class-data sharing), so that it starts faster:
#   quick-start.sh HOME JAVA ARCHIVE
# Publishes a small log to learn which classes that takes. If anything fails, an empty archive is left, which
# the launcher passes over.
home=$1 java=$2 archive=$3
mkdir -p "$(dirname -- "$archive")" || exit 1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
{
  "$java" -Djava.awt.headless=true -jar "$home/target/chinelog.jar" begin "$work/log" &&
  mkdir -p "$work/log/photos" &&
  { cp "$home/sample-log/photos/T20_0430.jpg" "$home/sample-log/photos/T20_0463.jpg" "$work/log/photos" || :; } &&
  "$java" -XX:DumpLoadedClassList="$work/classes" -XX:TieredStopAtLevel=1 -XX:+UseSerialGC \
    -Djava.awt.headless=true -jar "$home/target/chinelog.jar" publish "$work/log" &&
  "$java" -Xshare:dump -XX:SharedClassListFile="$work/classes" -XX:SharedArchiveFile="$work/archive" \
    -XX:+UseSerialGC -cp "$home/target/chinelog.jar"
} >/dev/null 2>&1 && mv -f "$work/archive" "$archive" && touch "$archive" && exit 0
: >"$archive"
exit 1
