@echo off
rem Runs chinelog; builds it first where there is no build yet, and says so.
setlocal
set "HOME_DIR=%~dp0"
set "JAR=%HOME_DIR%target\chinelog.jar"
if not exist "%JAR%" (
  echo Building chinelog; this takes a minute the first time ... 1>&2
  pushd "%HOME_DIR%"
  call mvn -q -B -DskipTests -Dspotless.check.skip=true package
  if errorlevel 1 (
    popd
    echo The build failed. chinelog needs a JDK 17 or newer, Maven, and the network the first time. 1>&2
    exit /b 70
  )
  popd
)
java -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:MaxNewSize=128m %CHINELOG_JAVA_OPTIONS% -Djava.awt.headless=true -jar "%JAR%" %*
exit /b %ERRORLEVEL%
