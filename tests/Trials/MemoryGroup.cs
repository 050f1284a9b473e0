using System.Globalization;

namespace Foreshore.Trials;

/// <summary>
/// A memory cgroup below the one that this process is in, of either version, with a limit as a container or a unit has it. What goes
/// beyond is ended by the kernel, as there.
/// </summary>
internal sealed class MemoryGroup : IDisposable
{
    private readonly string folder;
    private readonly bool isFirst;

    private MemoryGroup(string folder, bool isFirst) => (this.folder, this.isFirst) = (folder, isFirst);

    /// <summary>Null where none can be made here.</summary>
    public static MemoryGroup? Make(long bytes)
    {
        var lines = File.ReadAllLines("/proc/self/cgroup").Select(line => line.Split(':', 3)).ToList();
        var first = lines.Find(line => line[1].Split(',').Contains("memory"));
        var parent = first is not null ? $"/sys/fs/cgroup/memory{first[2]}" : $"/sys/fs/cgroup{lines.Find(line => line[0] == "0")?[2]}";
        var group = new MemoryGroup(Path.Combine(parent, string.Create(CultureInfo.InvariantCulture, $"foreshore-trial-{Environment.ProcessId}")), first is not null);
        try
        {
            Directory.CreateDirectory(group.folder);
            group.Write(group.isFirst ? "memory.limit_in_bytes" : "memory.max", bytes.ToString(CultureInfo.InvariantCulture));
            return group;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Console.WriteLine($"No memory cgroup can be made here: {fault.Message}");
            return null;
        }
    }

    /// <summary>What enters it begins with this.</summary>
    public string[] Line => ["sh", "-c", $"echo $$ > '{folder}/cgroup.procs' && exec \"$0\" \"$@\""];

    /// <summary>The most it ever took, files it had in memory among them, which the kernel gives back when it must.</summary>
    public long Most => long.Parse(File.ReadAllText(Path.Combine(folder, isFirst ? "memory.max_usage_in_bytes" : "memory.peak")), CultureInfo.InvariantCulture);

    /// <summary>Without files: what cannot be given back.</summary>
    public long Now => Number("memory.stat", isFirst ? "total_rss" : "anon");

    public long Killed => Number(isFirst ? "memory.oom_control" : "memory.events", "oom_kill");

    public void Dispose() => Directory.Delete(folder);

    private long Number(string file, string name) => File.ReadLines(Path.Combine(folder, file)).Select(line => line.Split(' '))
        .Where(parts => parts[0] == name).Select(parts => long.Parse(parts[1], CultureInfo.InvariantCulture)).FirstOrDefault();

    private void Write(string file, string value) => File.WriteAllText(Path.Combine(folder, file), value);
}
