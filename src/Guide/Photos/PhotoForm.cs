using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Photos;

/// <summary>The photo field of a form.</summary>
public static class PhotoForm
{
    public const string Field = "photo";

    /// <summary>Before a photo's number: the button that takes it out again.</summary>
    public const string Remove = "remove-";

    /// <summary>What a form with photos may bring: as many as a proposal holds, and its own texts. Other forms stay at 1 MiB.</summary>
    public const int MostBytesPosted = Album.MostOfProposal * Developing.MostBytes + (1 << 20);

    /// <summary>Develops the photos that came with a form; the first that is not taken becomes a fault beside the field.</summary>
    public static async Task<(IReadOnlyList<DevelopedPhoto> Photos, IReadOnlyList<FieldFault> Faults)> DevelopAsync(
        this Album album, Reader member, IFormCollection form, int most, CancellationToken cancel)
    {
        var files = form.Files.GetFiles(Field).Where(file => file.Length > 0 || file.FileName.Length > 0).ToList();
        if (files.Count > most)
            return ([], [new(Field, most == 1 ? "One photo goes with this. Choose the one that shows it best." : $"{most} photos go with this at most. Choose the {most} that show it best.")]);
        List<DevelopedPhoto> developed = [];
        foreach (var file in files)
        {
            try
            {
                await using var stream = file.OpenReadStream();
                developed.Add(await album.DevelopAsync(member, stream, cancel));
            }
            catch (NotAcceptedException refused)
            {
                return ([], [new(Field, $"{Named(file.FileName)}: {refused.Message}")]);
            }
        }
        return (developed, []);
    }

    /// <summary>The photo that a button asks to take out.</summary>
    public static Guid? Removed(IFormCollection form) =>
        form["then"].ToString() is var then && then.StartsWith(Remove, StringComparison.Ordinal) ? TypedValue.Id(then[Remove.Length..]) : null;

    private static string Named(string name)
    {
        var last = new string([.. name[(name.LastIndexOfAny(['/', '\\']) + 1)..].Where(letter => !char.IsControl(letter))]);
        return last.Length == 0 ? "The photo" : last.Length > 60 ? last[..60] + "…" : last;
    }
}
