using System.Globalization;
using System.Runtime.InteropServices;

namespace Foreshore.Guide.Photos;

/// <summary>Bounds what this process may take from here on, whatever a decoder makes of a stranger's file.</summary>
internal static class NativeMemory
{
    /// <summary>RLIMIT_DATA: what is written to, of the heap and of private mappings (Linux since 4.7, man 2 getrlimit).</summary>
    private const int WrittenTo = 2;

    /// <summary>False where the system knows no such bound; then the checks of size alone hold.</summary>
    public static bool Allow(long moreBytes)
    {
        if (!OperatingSystem.IsLinux())
            return false;
        var taken = File.ReadLines("/proc/self/status").First(line => line.StartsWith("VmData:", StringComparison.Ordinal));
        var kilobytes = long.Parse(taken["VmData:".Length..].Replace("kB", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);
        var most = new Bounds((nuint)(kilobytes * 1024 + moreBytes), (nuint)(kilobytes * 1024 + moreBytes));
        return setrlimit(WrittenTo, in most) == 0;
    }

    private readonly record struct Bounds(nuint Soft, nuint Hard);

    [DllImport("libc", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int setrlimit(int resource, in Bounds bounds);
}
