using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Contributions;

/// <summary>What was typed, by the names of fields, read as what each is meant to be. What cannot be read is a fault of its field.</summary>
public sealed class Answers(IReadOnlyDictionary<string, string> values)
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    public IReadOnlyDictionary<string, string> Values => values;

    public string? Text(string name) => values.TryGetValue(name, out var typed) && !string.IsNullOrWhiteSpace(typed) ? typed.Trim() : null;

    public bool Yes(string name) => Text(name) is "yes";

    public double? Number(string name) => Text(name) is not { } typed ? null
        : TypedValue.Number(typed) ?? throw Fault(name, $"\"{Short(typed)}\" is not a number. Enter one like 2.4, without its unit.");

    public int? Whole(string name) => Number(name) is not { } number ? null
        : number == Math.Floor(number) && Math.Abs(number) < 1e6 ? (int)number : throw Fault(name, "Enter a whole number here.");

    public TEnum? Choice<TEnum>(string name) where TEnum : struct, Enum => Text(name) is not { } typed ? null : One<TEnum>(name, typed);

    public IReadOnlyList<TEnum> Several<TEnum>(string name) where TEnum : struct, Enum =>
        Text(name) is not { } typed ? [] : [.. typed.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(each => One<TEnum>(name, each)).Distinct()];

    public LocalDate? Date(string name) => Text(name) is not { } typed ? null
        : LocalDatePattern.Iso.Parse(typed) is { Success: true, Value: var date } ? date : throw Fault(name, $"\"{Short(typed)}\" is not a date. Enter one like 2026-11-25.");

    public LocalTime? Time(string name) => Text(name) is not { } typed ? null
        : Clock.Parse(typed) is { Success: true, Value: var time } ? time : throw Fault(name, $"\"{Short(typed)}\" is not a time of day. Enter hours and minutes like 06:30.");

    public OpeningHours? Hours(string name) => Rules(name, HoursNotation.Read);

    /// <summary>Empty: nothing is known of them.</summary>
    public Timetable Sailings(string name) => Rules(name, SailingsNotation.Read) ?? Timetable.Unknown;

    public Position? Position(string name)
    {
        if (Text(name) is not { } typed)
            return null;
        var (position, fault) = TypedPosition.Read(typed);
        return position ?? throw Fault(name, fault!);
    }

    /// <summary>The value, or a fault beside its field that says what to enter.</summary>
    public T Needed<T>(string name, T? value, string words) where T : struct => value ?? throw Fault(name, words);

    public string Needed(string name, string words) => Text(name) ?? throw Fault(name, words);

    public static AnswerException Fault(string name, string words) => new(new FieldFault(name, words));

    private T? Rules<T>(string name, Func<string, T> read) where T : class
    {
        try
        {
            return Text(name) is { } typed ? read(typed) : null;
        }
        catch (NotAcceptedException refused)
        {
            throw Fault(name, refused.Message);
        }
    }

    private static TEnum One<TEnum>(string name, string typed) where TEnum : struct, Enum =>
        Enum.TryParse<TEnum>(typed, out var value) && Enum.IsDefined(value) && !char.IsAsciiDigit(typed[0]) && typed[0] != '-' ? value
            : throw Fault(name, $"\"{Short(typed)}\" is none of the choices. Choose one of the list.");

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";
}

/// <summary>What was typed in one field cannot be taken.</summary>
public sealed class AnswerException : Exception
{
    public AnswerException(FieldFault fault) : base(fault.Words) => Fault = fault;

    public AnswerException() : this(new FieldFault("", "")) { }

    public AnswerException(string message) : this(new FieldFault("", message)) { }

    public AnswerException(string message, Exception inner) : base(message, inner) => Fault = new FieldFault("", message);

    public FieldFault Fault { get; }
}
