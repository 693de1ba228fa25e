@echo off
rem Builds everything once and runs every test. Usage: check [--only NAME]. Needs the .NET SDK 10; browser tests need Chromium on PATH.
setlocal
cd /d "%~dp0"
dotnet restore Cloveshed.slnx --locked-mode --verbosity quiet || exit /b 1
dotnet build Cloveshed.slnx --configuration Release --no-restore --verbosity quiet || exit /b 1
dotnet tools\Cloveshed.TestRun\bin\Release\net10.0\Cloveshed.TestRun.dll --root . --results out\check %*
