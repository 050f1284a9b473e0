using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>Things of a place that a field may name.</summary>
public enum NameList { CarParks, Ways }

public enum FieldKind { Line, Text, Number, Whole, Choice, Several, YesNo, Date, Time, Position, Hours, Sailings }

/// <summary>One thing of a place, stance or picture that a member may propose to change, as forms, differences and history know it.</summary>
/// <param name="Name">Stable for good: proposals and revisions are kept by it.</param>
/// <param name="Label">As forms and differences print it.</param>
public sealed record SheetField(string Name, string Label, FieldKind Kind = FieldKind.Line)
{
    public string? Hint { get; init; }

    /// <summary>What may be chosen: the value kept and its words. Empty for other kinds.</summary>
    public IReadOnlyList<(string Value, string Words)> Choices { get; init; } = [];

    /// <summary>
    /// A figure on which a turn back or a keep off stands: with two wardens, one other than its proposer accepts it. Whoever adds a field
    /// says so here, with <see cref="Guarded"/>; <c>GuardTests</c> fails for one that is neither guarded nor listed as harmless.
    /// </summary>
    public bool IsGuarded { get; init; }

    /// <summary>A statement that only a warden makes, such as why no waves come.</summary>
    public bool IsWardens { get; init; }

    /// <summary>Choices that only a warden makes, where others are open to all.</summary>
    public IReadOnlyList<string> WardensChoices { get; init; } = [];

    /// <summary>What may be chosen are names of the place's own things; the name is what is kept.</summary>
    public NameList? Names { get; init; }

    /// <summary>Nothing can be published without it.</summary>
    public bool IsRequired { get; init; }

    /// <summary>Not among a form's questions: it has a page of its own. It is compared, kept and restored like the rest.</summary>
    public bool HasOwnPage { get; init; }

    public int Longest { get; init; } = 400;

    public SheetField Guarded() => this with { IsGuarded = true };

    public SheetField Wardens() => this with { IsWardens = true };

    public SheetField WardensAlone<TEnum>(params IEnumerable<TEnum> choices) where TEnum : struct, Enum => this with { WardensChoices = [.. choices.Select(choice => choice.ToString())] };

    /// <summary>This text is for a warden to write.</summary>
    public bool IsForWardens(string text) => IsWardens || WardensChoices.Contains(text);

    public SheetField Required() => this with { IsRequired = true };

    public SheetField Hinted(string hint) => this with { Hint = hint };

    /// <summary>The value in words, as differences print it.</summary>
    public string Words(string value) => value.Length == 0 ? "not recorded" : Kind switch
    {
        FieldKind.Choice or FieldKind.YesNo => WordsOf(value),
        FieldKind.Hours or FieldKind.Sailings => RuleWords(value),
        FieldKind.Several => string.Join(", ", value.Split(' ').Select(WordsOf)),
        _ => value,
    };

    public static SheetField Of<TEnum>(string name, string label, Func<TEnum, string> words, FieldKind kind = FieldKind.Choice) where TEnum : struct, Enum =>
        new(name, label, kind) { Choices = [.. Enum.GetValues<TEnum>().Select(value => (value.ToString(), words(value)))] };

    public static SheetField YesOrNo(string name, string label) =>
        new(name, label, FieldKind.YesNo) { Choices = [("no", "no"), ("yes", "yes")] };

    /// <summary>Hours and sailings as the page will say them; null for other kinds, and while they cannot be read.</summary>
    public string? ReadBack(string value)
    {
        try
        {
            return value.Length == 0 ? null : Kind switch
            {
                FieldKind.Hours => HoursNotation.Read(value).Words(),
                FieldKind.Sailings => SailingsNotation.Read(value).Words(),
                _ => null,
            };
        }
        catch (NotAcceptedException)
        {
            return null;
        }
    }

    /// <summary>In words, with what was typed behind it, so that it can be typed again.</summary>
    private string RuleWords(string value) => ReadBack(value) is { } words ? $"{words} ({value})" : value;

    private string WordsOf(string value) => Choices.FirstOrDefault(choice => choice.Value == value) is { Words: { } words } ? words : value;
}
