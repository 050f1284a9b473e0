namespace Foreshore.Almanac.Tides;

/// <summary>A constituent's name that <see cref="Constituents"/> does not know. Never skipped in silence.</summary>
public sealed class UnknownConstituentException : TideInputException
{
    /// <summary>Without a name.</summary>
    public UnknownConstituentException() { }

    /// <summary>With words of one's own.</summary>
    /// <param name="message">What, why, what to do.</param>
    public UnknownConstituentException(string message) : base(message) { }

    /// <summary>With words of one's own and a cause.</summary>
    /// <param name="message">What, why, what to do.</param>
    /// <param name="innerException">The cause.</param>
    public UnknownConstituentException(string message, Exception innerException) : base(message, innerException) { }

    /// <summary>The name as it was given.</summary>
    public string ConstituentName { get; private init; } = "";

    internal static UnknownConstituentException Named(string name) =>
        new($"No constituent is named \"{name}\". Without it the tide would be wrong unnoticed. Use the name of the IHO's constituent list, such as M2, LAM2 or 2MS6, or leave the row out.")
        {
            ConstituentName = name,
        };
}
