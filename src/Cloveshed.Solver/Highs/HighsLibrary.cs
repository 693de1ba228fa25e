using System.Reflection;
using System.Runtime.InteropServices;

namespace Cloveshed.Solver.Highs;

/// <summary>
/// The C interface of the HiGHS library that comes inside the OR-Tools runtime package. The OR-Tools wrapper of it returns
/// wrong duals and loses incumbents at a limit, so it is called directly: see docs/decisions.
/// HighsInt is 4 bytes in this build (checked once at load).
/// </summary>
internal static partial class HighsLibrary
{
    private const string Name = "cloveshed-highs";

    static HighsLibrary()
    {
        NativeLibrary.SetDllImportResolver(typeof(HighsLibrary).Assembly, Resolve);
        Silence();
        if (Highs_getSizeofHighsInt(nint.Zero) != sizeof(int))
            throw new PlatformNotSupportedException("The HiGHS library uses 8-byte integers; this binding expects 4. Use the packaged Google.OrTools runtime.");
    }

    /// <summary>
    /// Whatever its options say, the library prints a line from the middle of its branch and bound to C's standard output (ERGO-Code/HiGHS issue 2783), which would
    /// stand among what a command prints. C's stream is sent nowhere; .NET writes to the file itself and is not touched.
    /// </summary>
    private static void Silence()
    {
        if (!OperatingSystem.IsLinux() || !NativeLibrary.TryLoad("libc.so.6", out nint libc) || !NativeLibrary.TryGetExport(libc, "stdout", out nint stream)) return;
        if (OpenStream("/dev/null", "w") is var nowhere && nowhere != nint.Zero) Marshal.WriteIntPtr(stream, nowhere);
    }

    [LibraryImport("libc.so.6", EntryPoint = "fopen", StringMarshalling = StringMarshalling.Utf8)]
    private static partial nint OpenStream(string path, string mode);

    private static nint Resolve(string name, Assembly assembly, DllImportSearchPath? path)
    {
        if (name != Name) return nint.Zero;
        string file = OperatingSystem.IsWindows() ? "highs.dll" : OperatingSystem.IsMacOS() ? "libhighs.1.dylib" : "libhighs.so.1";
        string system = OperatingSystem.IsWindows() ? "win" : OperatingSystem.IsMacOS() ? "osx" : "linux";
        string processor = RuntimeInformation.ProcessArchitecture == Architecture.Arm64 ? "arm64" : "x64";
        string[] folders =
        [
            AppContext.BaseDirectory,
            Path.Combine(AppContext.BaseDirectory, "runtimes", $"{system}-{processor}", "native"),
        ];
        foreach (string folder in folders)
            if (NativeLibrary.TryLoad(Path.Combine(folder, file), out nint handle)) return handle;
        return NativeLibrary.Load(file, assembly, path);
    }

    [LibraryImport(Name)] internal static partial nint Highs_create();
    [LibraryImport(Name)] internal static partial void Highs_destroy(nint highs);
    [LibraryImport(Name)] internal static partial int Highs_getSizeofHighsInt(nint highs);
    [LibraryImport(Name, StringMarshalling = StringMarshalling.Utf8)] internal static partial int Highs_setBoolOptionValue(nint highs, string option, int value);
    [LibraryImport(Name, StringMarshalling = StringMarshalling.Utf8)] internal static partial int Highs_setIntOptionValue(nint highs, string option, int value);
    [LibraryImport(Name, StringMarshalling = StringMarshalling.Utf8)] internal static partial int Highs_setDoubleOptionValue(nint highs, string option, double value);
    [LibraryImport(Name, StringMarshalling = StringMarshalling.Utf8)] internal static partial int Highs_setStringOptionValue(nint highs, string option, string value);
    [LibraryImport(Name, StringMarshalling = StringMarshalling.Utf8)] internal static partial int Highs_getDoubleInfoValue(nint highs, string info, out double value);
    [LibraryImport(Name, StringMarshalling = StringMarshalling.Utf8)] internal static partial int Highs_getIntInfoValue(nint highs, string info, out int value);
    [LibraryImport(Name)] internal static partial int Highs_changeObjectiveSense(nint highs, int sense);
    [LibraryImport(Name)] internal static unsafe partial int Highs_addRows(nint highs, int count, double* lower, double* upper, int nonZeros, int* starts, int* index, double* value);
    [LibraryImport(Name)] internal static unsafe partial int Highs_addCols(nint highs, int count, double* cost, double* lower, double* upper, int nonZeros, int* starts, int* index, double* value);
    [LibraryImport(Name)] internal static unsafe partial int Highs_deleteColsBySet(nint highs, int count, int* set);
    [LibraryImport(Name)] internal static partial int Highs_changeRowBounds(nint highs, int row, double lower, double upper);
    [LibraryImport(Name)] internal static unsafe partial int Highs_changeColsBoundsBySet(nint highs, int count, int* set, double* lower, double* upper);
    [LibraryImport(Name)] internal static unsafe partial int Highs_changeColsCostBySet(nint highs, int count, int* set, double* cost);
    [LibraryImport(Name)] internal static unsafe partial int Highs_changeColsIntegralityBySet(nint highs, int count, int* set, int* integrality);
    [LibraryImport(Name)] internal static partial int Highs_run(nint highs);
    [LibraryImport(Name)] internal static partial int Highs_zeroAllClocks(nint highs);
    [LibraryImport(Name)] internal static partial int Highs_clearSolver(nint highs);
    [LibraryImport(Name)] internal static partial int Highs_getModelStatus(nint highs);
    [LibraryImport(Name)] internal static unsafe partial int Highs_getSolution(nint highs, double* columnValue, double* columnDual, double* rowValue, double* rowDual);
    [LibraryImport(Name)] internal static unsafe partial int Highs_getBasis(nint highs, int* columnStatus, int* rowStatus);
    [LibraryImport(Name)] internal static unsafe partial int Highs_setBasis(nint highs, int* columnStatus, int* rowStatus);
    [LibraryImport(Name)] internal static unsafe partial int Highs_setSolution(nint highs, double* columnValue, double* rowValue, double* columnDual, double* rowDual);
}
