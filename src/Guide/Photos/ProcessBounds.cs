using System.Globalization;
using System.Runtime.InteropServices;

namespace Foreshore.Guide.Photos;

/// <summary>Bounds what this process may take from here on, whatever a decoder makes of a stranger's file.</summary>
internal static class ProcessBounds
{
    /// <summary>How a process ends that was given no more time: by signal 24, as the runtime of its parent tells it.</summary>
    public const int OutOfTime = 128 + 24;

    /// <summary>RLIMIT_CPU: seconds of a processor (man 2 getrlimit).</summary>
    private const int Processor = 0;

    /// <summary>RLIMIT_DATA: what is written to, of the heap and of private mappings (Linux since 4.7).</summary>
    private const int WrittenTo = 2;

    /// <summary>False where the system knows no such bounds; then the checks of size and the parent's patience alone hold.</summary>
    public static bool Set(long moreBytes, int seconds)
    {
        if (!OperatingSystem.IsLinux())
            return false;
        var taken = File.ReadLines("/proc/self/status").First(line => line.StartsWith("VmData:", StringComparison.Ordinal));
        var kilobytes = long.Parse(taken["VmData:".Length..].Replace("kB", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);
        var most = (nuint)(kilobytes * 1024 + moreBytes);
        // Where both are the same the process is killed without the signal that tells why.
        var (memory, time) = (new Bound(most, most), new Bound((nuint)seconds, (nuint)seconds + 1));
        return setrlimit(WrittenTo, in memory) == 0 && setrlimit(Processor, in time) == 0;
    }

    private readonly record struct Bound(nuint Soft, nuint Hard);

    [DllImport("libc", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int setrlimit(int resource, in Bound bound);
}
