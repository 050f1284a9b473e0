namespace Foreshore.Almanac.Stays;

/// <summary>
/// A stretch in which one can be there as far as some of the rules go: from when the walk in is done, from when the kit can be
/// set up, until when one must turn back. Days from J2000; infinite where nothing bounds it.
/// </summary>
internal readonly record struct Presence(double Arrival, double SetUp, double Leave, StayBound Opening, StayBound Closing)
{
    /// <summary>The bound that would end it if the binding one did not, and when one would turn back for it.</summary>
    internal StayBound NextClosing { get; init; } = new(StayCause.None, double.PositiveInfinity);

    internal double NextLeave { get; init; } = double.PositiveInfinity;

    internal static readonly Presence Always = new(double.NegativeInfinity, double.NegativeInfinity, double.PositiveInfinity,
        new StayBound(StayCause.None, double.NegativeInfinity), new StayBound(StayCause.None, double.PositiveInfinity));

    internal double First => Math.Max(Arrival, SetUp);

    private bool IsEmpty => First >= Leave;

    /// <summary>What two rules leave: the later beginning, the earlier end. Both lists are in order.</summary>
    internal static List<Presence> Both(IReadOnlyList<Presence> one, IReadOnlyList<Presence> other)
    {
        var both = new List<Presence>();
        for (int i = 0, j = 0; i < one.Count && j < other.Count;)
        {
            var joint = one[i].With(other[j]);
            if (!joint.IsEmpty) both.Add(joint);
            if (one[i].Leave < other[j].Leave) i++;
            else j++;
        }

        return both;
    }

    private Presence With(in Presence other)
    {
        var (binding, second) = other.Leave < Leave ? (other, this) : (this, other);
        var secondIsNext = second.Leave <= binding.NextLeave;
        return new(Math.Max(Arrival, other.Arrival), Math.Max(SetUp, other.SetUp), binding.Leave, other.First > First ? other.Opening : Opening, binding.Closing)
        {
            NextClosing = secondIsNext ? second.Closing : binding.NextClosing,
            NextLeave = secondIsNext ? second.Leave : binding.NextLeave,
        };
    }
}
