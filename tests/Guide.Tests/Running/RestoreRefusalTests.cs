using Foreshore.Guide.Database;
using Foreshore.Guide.Hosting;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Running;

/// <summary>What is no whole backup of this version or an older one changes nothing.</summary>
public sealed class RestoreRefusalTests : IAsyncDisposable
{
    private const int AtMost = 240_000;
    private readonly DataFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string InFolder(string name) => Path.Combine(folder.Path, name);

    [Fact]
    public async Task A_backup_of_a_newer_version_is_refused_by_the_change_it_holds()
    {
        var file = await WrittenAsync(new BackupHead(BackupHead.CurrentFormat, Instant.FromUnixTimeSeconds(0), "18.4", [.. Schema.Known(), "29990101000000_Later"]));

        var refusal = await Assert.ThrowsAsync<OperatorException>(() => Restore.RunAsync(file, folder.Options, Stop));

        Assert.Contains("newer version", refusal.What, StringComparison.Ordinal);
        Assert.Contains("29990101000000_Later", refusal.What, StringComparison.Ordinal);
        Assert.False(Directory.Exists(InFolder("postgres")));
    }

    [Fact]
    public async Task A_newer_format_is_refused()
    {
        var file = await WrittenAsync(new BackupHead(BackupHead.CurrentFormat + 1, Instant.FromUnixTimeSeconds(0), "18.4", []));

        var refusal = await Assert.ThrowsAsync<OperatorException>(() => Restore.RunAsync(file, folder.Options, Stop));

        Assert.Contains("newer version", refusal.What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_file_is_no_backup()
    {
        Directory.CreateDirectory(folder.Path);
        await File.WriteAllTextAsync(InFolder("notes.txt"), "Ebb at nine.");

        var refusal = await Assert.ThrowsAsync<OperatorException>(() => Restore.RunAsync(InFolder("notes.txt"), folder.Options, Stop));
        var missing = await Assert.ThrowsAsync<OperatorException>(() => Restore.RunAsync(InFolder("none"), folder.Options, Stop));

        Assert.Contains("damaged", refusal.What, StringComparison.Ordinal);
        Assert.Contains("cannot be read", missing.What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_that_leads_out_of_the_folder_is_not_followed()
    {
        var file = await WrittenAsync(new BackupHead(BackupHead.CurrentFormat, Instant.FromUnixTimeSeconds(0), "18.4", []), "../outside");

        await Assert.ThrowsAsync<OperatorException>(() => BackupReader.UnpackAsync(file, InFolder("inside"), Stop));

        Assert.False(File.Exists(InFolder("outside")));
    }

    /// <summary>Cut anywhere, or with one bit turned: told, and the data in use stay as they were.</summary>
    [Fact(Timeout = AtMost)]
    public async Task A_damaged_backup_is_refused_and_what_is_in_use_stays()
    {
        var whole = InFolder("whole.tar.gz");
        SortedDictionary<string, string> before;
        await using (var cluster = await BackupTests.WithDemoAsync(folder))
        {
            await BackupTests.SaidAsync("backup", whole, folder);
            before = await Tables.SumsAsync(cluster.OwnerConnection);
        }

        var bytes = await File.ReadAllBytesAsync(whole, Stop);
        foreach (var share in new[] { 0.001, 0.3, 0.7, 0.999 })
            await RefusedAsync(bytes[..(int)(bytes.Length * share)]);
        foreach (var share in new[] { 0.2, 0.6, 0.95 })
        {
            var turned = (byte[])bytes.Clone();
            turned[(int)(turned.Length * share)] ^= 4;
            await RefusedAsync(turned);
        }

        await using var again = await folder.StartAsync();
        Assert.Equal(before, await Tables.SumsAsync(again.OwnerConnection));
        Assert.False(Directory.Exists(InFolder("restoring")));
    }

    /// <summary>Killed between two of the names it changes, at each of them: the next start finishes it.</summary>
    [Fact]
    public void A_swap_that_was_cut_off_is_finished_by_the_next_start()
    {
        var place = new ClusterPlace(Directory.CreateDirectory(folder.Path).FullName);
        foreach (var step in new[] { "begun", "passwords moved away", "former moved away", "new moved in" })
        {
            if (Directory.Exists(place.Data))
                Directory.Delete(place.Data, recursive: true);
            var beside = Directory.CreateDirectory(InFolder("restoring")).FullName;
            Make(beside, "new");
            File.WriteAllText(Path.Combine(beside, "whole"), "");
            if (step is not ("former moved away" or "new moved in"))
                Make(place.Data, "former", withPasswords: step == "begun");
            if (step == "new moved in")
                Directory.Move(Path.Combine(beside, "postgres"), place.Root);

            ClusterSwap.FinishIfWhole(place);

            Assert.Equal("new", File.ReadAllText(Path.Combine(place.Cluster(18), "PG_VERSION")));
            Assert.Equal("new", File.ReadAllText(place.Passwords(18)));
            Assert.False(Directory.Exists(beside));
        }

        static void Make(string data, string word, bool withPasswords = true)
        {
            File.WriteAllText(Path.Combine(Directory.CreateDirectory(Path.Combine(data, "postgres", "18")).FullName, "PG_VERSION"), word);
            if (withPasswords)
                File.WriteAllText(Path.Combine(data, "postgres-18.passwords"), word);
        }
    }

    [Theory]
    [InlineData("000000010000000000000004", "000000010000000000000004", "000000010000000000000004")]
    [InlineData("0000000100000000000000FE", "000000010000000100000001", "0000000100000000000000FE 0000000100000000000000FF 000000010000000100000000 000000010000000100000001")]
    public void The_servers_log_is_counted_as_its_manual_names_it(string first, string last, string names) =>
        Assert.Equal(names.Split(' '), WalSegments.Between(first, last, 16 << 20));

    public async ValueTask DisposeAsync() => await folder.DisposeAsync();

    private async Task RefusedAsync(byte[] bytes)
    {
        var file = InFolder("damaged.tar.gz");
        await File.WriteAllBytesAsync(file, bytes, Stop);
        var refusal = await Assert.ThrowsAsync<OperatorException>(() => Restore.RunAsync(file, folder.Options, Stop));
        Assert.Matches("damaged or cut short|no backup", refusal.What);
    }

    private async Task<string> WrittenAsync(BackupHead head, string? more = null)
    {
        Directory.CreateDirectory(folder.Path);
        var file = InFolder("made.tar.gz");
        await using (var writer = BackupWriter.Create(file))
        {
            await writer.AddAsync(BackupHead.Name, head, Stop);
            if (more is not null)
                await writer.AddAsync(more, "x"u8.ToArray(), Stop);
            await writer.FinishAsync(Stop);
        }

        return file;
    }
}
