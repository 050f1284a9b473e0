namespace Foreshore.Guide.Database;

/// <summary>
/// Puts a cluster that was built beside into the place of the one in use. A mark says that it is whole; from then on the swap is finished
/// by whoever comes next, so that a restore that is cut off leaves either the former data or the new, never none.
/// </summary>
internal sealed class ClusterSwap : IAsyncDisposable
{
    private const string Mark = "whole";
    private readonly FileStream runLock;

    private ClusterSwap(ClusterPlace place, Account account, FileStream runLock) => (Place, Account, this.runLock) = (place, account, runLock);

    public Account Account { get; }

    public ClusterPlace Place { get; }

    /// <summary>A data folder of its own inside the other, so that the swap is a matter of names.</summary>
    public ClusterPlace Beside => new(BesideOf(Place));

    /// <summary>Holds the data folder against any run until it is done.</summary>
    public static async Task<ClusterSwap> BeginAsync(EmbeddedClusterOptions options)
    {
        var account = await Account.ChooseAsync(options.Directory is null ? "" : Path.Combine(options.Directory, "postgres"));
        var place = await ClusterPlace.ChooseAsync(options.Directory, account);
        var runLock = place.TakeLock();
        try
        {
            FinishIfWhole(place);
            if (Directory.Exists(BesideOf(place)))
            {
                await EmbeddedCluster.RemoveAsync(options with { Directory = BesideOf(place) });
                Directory.Delete(BesideOf(place), recursive: true);
            }

            Directory.CreateDirectory(BesideOf(place));
            return new ClusterSwap(place, account, runLock);
        }
        catch
        {
            await runLock.DisposeAsync();
            throw;
        }
    }

    /// <summary>Then nothing of it may be thrown away any more.</summary>
    public bool IsWhole => File.Exists(Path.Combine(BesideOf(Place), Mark));

    /// <summary>From here on the new cluster counts. Where the former went; null where there was none.</summary>
    public string? Finish()
    {
        File.WriteAllText(Path.Combine(BesideOf(Place), Mark), "");
        return FinishIfWhole(Place);
    }

    /// <summary>Asked at every start too. Each step is left out where it was done before.</summary>
    public static string? FinishIfWhole(ClusterPlace place)
    {
        var beside = BesideOf(place);
        if (!File.Exists(Path.Combine(beside, Mark)))
            return null;

        string? former = null;
        if (Directory.Exists(Path.Combine(beside, "postgres")))
        {
            if (Directory.Exists(place.Root))
            {
                former = FormerFolder(place);
                Move(place.Data, former);
            }

            Directory.Move(Path.Combine(beside, "postgres"), place.Root);
        }

        foreach (var file in Directory.GetFiles(beside, "*.passwords"))
            File.Move(file, Path.Combine(place.Data, Path.GetFileName(file)), overwrite: true);
        Directory.Delete(beside, recursive: true);
        return former;
    }

    public async ValueTask DisposeAsync() => await runLock.DisposeAsync();

    private static string BesideOf(ClusterPlace place) => Path.Combine(place.Data, "restoring");

    private static string FormerFolder(ClusterPlace place)
    {
        var number = 1;
        while (Directory.Exists(Path.Combine(place.Data, $"before-restore-{number}", "postgres")))
            number++;
        return Directory.CreateDirectory(Path.Combine(place.Data, $"before-restore-{number}")).FullName;
    }

    /// <summary>The passwords first: without them the folder beside would open nothing, and the next step would lose them.</summary>
    private static void Move(string data, string former)
    {
        foreach (var file in Directory.GetFiles(data, "*.passwords"))
            File.Move(file, Path.Combine(former, Path.GetFileName(file)), overwrite: true);
        Directory.Move(Path.Combine(data, "postgres"), Path.Combine(former, "postgres"));
    }
}
