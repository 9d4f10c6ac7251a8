#!/bin/sh
# Keeps what Java works out when it loads chinelog's classes (class-data sharing): quick-start.sh HOME
# A small log is laid down and published to learn which classes that takes. If anything fails, there is no
# archive, and the launcher does without.
home=$1
app=$home/lib/app
java="$home/lib/runtime/bin/java -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -Djava.awt.headless=true -Xlog:disable"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
printf %s "$home" >"$app/quick-start.place"
rm -f "$app/quick-start.jsa"
# shellcheck disable=SC2086
{
  $java -cp "$app/chinelog.jar" chinelog.cli.Main begin "$work/log" &&
  $java -XX:DumpLoadedClassList="$work/classes" -cp "$app/chinelog.jar" chinelog.cli.Main publish "$work/log" &&
  $java -Xshare:dump -XX:SharedClassListFile="$work/classes" -XX:SharedArchiveFile="$work/archive" -cp "$app/chinelog.jar" &&
  mv -f "$work/archive" "$app/quick-start.jsa" && chmod 644 "$app/quick-start.jsa"
} >/dev/null 2>&1
