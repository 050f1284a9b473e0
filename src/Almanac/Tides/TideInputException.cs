namespace Foreshore.Almanac.Tides;

/// <summary>
/// Constants, offsets or tables of a tide that cannot be used. The message says what, why and what to do, in words that may
/// be shown to whoever gave them.
/// </summary>
public class TideInputException : Exception
{
    /// <summary>Without words; better say what is wrong.</summary>
    public TideInputException() { }

    /// <summary>With words that may be shown.</summary>
    /// <param name="message">What, why, what to do.</param>
    public TideInputException(string message) : base(message) { }

    /// <summary>With words that may be shown, and what caused it.</summary>
    /// <param name="message">What, why, what to do.</param>
    /// <param name="innerException">The cause.</param>
    public TideInputException(string message, Exception innerException) : base(message, innerException) { }
}
