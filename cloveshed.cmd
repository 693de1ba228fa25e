@echo off
rem Runs Cloveshed from its sources, building what has changed. Needs the .NET SDK 10.
setlocal
dotnet build "%~dp0src\Cloveshed.App\Cloveshed.App.csproj" --configuration Release --verbosity quiet -p:RestoreLockedMode=true 1>&2 || exit /b 1
dotnet "%~dp0src\Cloveshed.App\bin\Release\net10.0\cloveshed.dll" %*
