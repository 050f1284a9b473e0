using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Contributions;

/// <summary>Fields that belong together: one question of a form, written by one verb.</summary>
public record SheetPart(string Title, IReadOnlyList<SheetField> Fields);

public sealed record SheetPart<T>(string Title, IReadOnlyList<SheetField> Fields, Func<T, IReadOnlyList<string>> Read, Action<T, Answers> Write) : SheetPart(Title, Fields);

/// <summary>Everything of one kind of thing that can be proposed, compared, kept and restored, as texts by field.</summary>
public class Sheet(IReadOnlyList<SheetPart> parts)
{
    public IReadOnlyList<SheetPart> Parts { get; } = parts;

    public IEnumerable<SheetField> Fields => Parts.SelectMany(part => part.Fields);

    public SheetField? Field(string name) => Fields.FirstOrDefault(field => field.Name == name);

    /// <summary>The fields of this sheet whose texts differ; a field that is missing afterwards is untouched.</summary>
    public IReadOnlyList<FieldChange> Differences(IReadOnlyDictionary<string, string> before, IReadOnlyDictionary<string, string> after) =>
        [.. from field in Fields
            where after.ContainsKey(field.Name)
            let was = before.GetValueOrDefault(field.Name) ?? ""
            let becomes = after[field.Name]
            where was != becomes
            select new FieldChange(field.Name, was, becomes)];
}

public sealed class Sheet<T>(params SheetPart<T>[] parts) : Sheet(parts)
{
    public IReadOnlyDictionary<string, string> Read(T thing)
    {
        var values = new Dictionary<string, string>();
        foreach (var part in parts)
        {
            var texts = part.Read(thing);
            for (var i = 0; i < part.Fields.Count; i++)
                values[part.Fields[i].Name] = texts[i];
        }
        return values;
    }

    /// <summary>Writes the parts whose texts differ from what the thing holds; texts not given stay. Faults stand beside their fields.</summary>
    public IReadOnlyList<FieldFault> Write(T thing, IReadOnlyDictionary<string, string> given)
    {
        var held = Read(thing);
        var wanted = new Dictionary<string, string>(held);
        foreach (var (name, text) in given.Where(pair => held.ContainsKey(pair.Key)))
            wanted[name] = text.Trim();

        List<FieldFault> faults = [];
        var answers = new Answers(wanted);
        foreach (var part in parts.Where(part => part.Fields.Any(field => wanted[field.Name] != held[field.Name])))
        {
            try
            {
                part.Write(thing, answers);
                faults.AddRange(Dropped(part, given, part.Read(thing)));
            }
            catch (AnswerException fault)
            {
                faults.Add(fault.Fault);
            }
            catch (NotAcceptedException refused)
            {
                faults.Add(new(part.Fields.FirstOrDefault(field => wanted[field.Name] != held[field.Name])!.Name, refused.Message));
            }
        }
        return faults;
    }

    /// <summary>What was typed and has no place without another field, such as a period without a height: said, never lost in silence.</summary>
    private static IEnumerable<FieldFault> Dropped(SheetPart<T> part, IReadOnlyDictionary<string, string> given, IReadOnlyList<string> kept) =>
        from i in Enumerable.Range(0, part.Fields.Count)
        let field = part.Fields[i]
        where field.Kind is not (FieldKind.Choice or FieldKind.YesNo) && !field.Name.EndsWith("-station", StringComparison.Ordinal)
        where given.TryGetValue(field.Name, out var typed) && !string.IsNullOrWhiteSpace(typed) && kept[i].Length == 0
        let needed = part.Fields.FirstOrDefault(other => other.Name != field.Name && !given.TryGetValue(other.Name, out _) || string.IsNullOrWhiteSpace(given.GetValueOrDefault(other.Name)))
        select new FieldFault(field.Name, $"This can only be kept together with \"{(needed ?? part.Fields[0]).Label}\". Fill that in, or clear this.");
}

/// <summary>One field's text before and after; empty: not recorded.</summary>
public sealed record FieldChange(string Field, string Before, string After)
{
    public FieldChange Undone() => new(Field, After, Before);
}
