namespace Foreshore.Guide.Outlooks;

/// <summary>What the outlook comes to, in the order a board lists it. Never a permission: the sea, signs and wardens decide.</summary>
public enum Verdict
{
    Suits,
    Borderline,
    NotJudged,
    DoesNotSuit,
    KeepOff,
}

public static class VerdictWords
{
    /// <summary>The word a page prints first.</summary>
    public static string Word(this Verdict verdict) => verdict switch
    {
        Verdict.Suits => "suits",
        Verdict.Borderline => "borderline",
        Verdict.NotJudged => "not judged",
        Verdict.DoesNotSuit => "does not suit",
        Verdict.KeepOff => "keep off",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "No such verdict."),
    };
}
