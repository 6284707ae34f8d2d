@echo off
rem Starts evenrise: with the Java runtime that lies beside it, or the one that JAVA_HOME or the path names.
setlocal
set "HERE=%~dp0.."
if exist "%HERE%\runtime\bin\java.exe" (
  set "JAVA=%HERE%\runtime\bin\java.exe"
) else if defined JAVA_HOME (
  set "JAVA=%JAVA_HOME%\bin\java.exe"
) else (
  set "JAVA=java"
)
"%JAVA%" %EVENRISE_JAVA_OPTIONS% -jar "%HERE%\evenrise.jar" %*
