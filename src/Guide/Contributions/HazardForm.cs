using Foreshore.Guide.Access;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>What a near miss becomes for the day it is at the place: one of the two.</summary>
public sealed record NearMissTold(Func<Location, LocalDate, Closure>? Closure, Func<Location, LocalDate, HazardNote>? Note);

/// <summary>A hazard, a near miss or a closure as typed. Read for the day it is at the place; every fault stands beside its field.</summary>
public sealed class HazardForm(IReadOnlyDictionary<string, string> typed)
{
    private readonly Answers answers = new(typed);

    public string Place => typed.GetValueOrDefault("place", "");

    public string Of(string name) => typed.GetValueOrDefault(name, "");

    public (Func<Location, LocalDate, HazardNote>? Make, IReadOnlyList<FieldFault> Faults) Note()
    {
        var faults = new List<FieldFault>();
        Need(faults, "place", "At which place? Choose one.");
        Need(faults, "kind", "What kind of hazard is it? Choose one.");
        Need(faults, "severity", "How bad is it? Choose one; 4 is severe and shows at once.");
        Need(faults, "text", "What should others know? A sentence does.");
        if (faults.Count > 0)
            return (null, faults);
        return Read((place, today) =>
        {
            var stance = Stance(place);
            var note = new HazardNote(answers.Choice<HazardKind>("kind")!.Value, answers.Whole("severity")!.Value, Of("text"), answers.Date("from") ?? today, answers.Date("until"));
            return answers.Text("where") is null && answers.Position("position") is null && stance is null ? note
                : note.At(answers.Text("where") ?? stance?.Name ?? "As marked", answers.Position("position"), stance);
        });
    }

    /// <summary>A closure where somebody came to harm or a way was cut, else a note.</summary>
    public (NearMissTold? Told, IReadOnlyList<FieldFault> Faults) NearMiss(Guid formId)
    {
        var faults = new List<FieldFault>();
        Need(faults, "place", "At which place? Choose one.");
        Need(faults, "harm", "What came of it? Choose one.");
        Need(faults, "text", "What happened, and what should others know? No names.");
        if (faults.Count > 0)
            return (null, faults);
        var (harmless, unread) = Read((_, _) => answers.Choice<NearMissHarm>("harm") == NearMissHarm.None);
        if (harmless is null)
            return (null, unread);
        return (harmless(null!, default)
            ? new(null, (place, today) => Stance(place) is { } stance ? HazardNote.AfterNearMiss(today, Of("text"), formId).At(stance.Name, null, stance) : HazardNote.AfterNearMiss(today, Of("text"), formId))
            : new((place, today) => Stance(place) is { } stance ? Closure.AfterNearMiss(today, Of("text"), formId).Of(stance) : Closure.AfterNearMiss(today, Of("text"), formId), null), []);
    }

    public (Func<Location, LocalDate, Closure>? Make, IReadOnlyList<FieldFault> Faults) Closing()
    {
        var faults = new List<FieldFault>();
        Need(faults, "place", "Which place? Choose one.");
        Need(faults, "text", "Why is it closed? The reason stands wherever the closure does.");
        Need(faults, "closed-by", "Who closed it? The authority, the owner, or the club.");
        if (answers.Yes("yearly") && (answers.Text("from") is null || answers.Text("until") is null))
            faults.Add(new("from", "A closure of every year needs its first and its last day."));
        if (faults.Count > 0)
            return (null, faults);
        return Read((place, today) =>
        {
            var (from, until) = (answers.Date("from") ?? today, answers.Date("until"));
            var closure = answers.Yes("yearly")
                ? Closure.EveryYear(new AnnualDate(from.Month, from.Day), new AnnualDate(until!.Value.Month, until.Value.Day), Of("text"), Of("closed-by"))
                : Closure.Between(from, until, Of("text"), Of("closed-by"));
            if (answers.Text("link") is { } link)
                closure.See(link);
            return Part(place, closure);
        });
    }

    /// <summary>The closed part, written as <c>stance:12</c>, <c>leg:3</c> or <c>parking:7</c>; nothing: the whole place.</summary>
    private Closure Part(Location place, Closure closure)
    {
        if (answers.Text("part") is not { } part)
            return closure;
        var id = TypedValue.Whole(part[(part.IndexOf(':', StringComparison.Ordinal) + 1)..]) ?? -1;
        return part.Split(':')[0] switch
        {
            "stance" when place.VantagePoints.FirstOrDefault(v => v.Id == id) is { } stance => closure.Of(stance),
            "leg" when place.Routes.SelectMany(r => r.Legs).FirstOrDefault(leg => leg.Id == id) is { } leg => closure.Of(leg),
            "parking" when place.Parking.FirstOrDefault(p => p.Id == id) is { } area => closure.Of(area),
            _ => throw new NotAcceptedException("That part of the place is not there any more. Choose another."),
        };
    }

    private Compositions.VantagePoint? Stance(Location place) =>
        answers.Text("stance") is { } slug ? place.VantagePoints.FirstOrDefault(v => v.Slug == slug) : null;

    /// <summary>Tried once on nothing, so that what cannot be read is said before the place is loaded.</summary>
    private (Func<Location, LocalDate, T>?, IReadOnlyList<FieldFault>) Read<T>(Func<Location, LocalDate, T> make)
    {
        try
        {
            (_, _, _, _, _, _) = (answers.Choice<HazardKind>("kind"), answers.Choice<NearMissHarm>("harm"), answers.Whole("severity"), answers.Date("from"), answers.Date("until"), answers.Position("position"));
            return (make, []);
        }
        catch (AnswerException fault)
        {
            return (null, [fault.Fault]);
        }
    }

    private void Need(List<FieldFault> faults, string name, string words)
    {
        if (answers.Text(name) is null)
            faults.Add(new(name, words));
    }
}
