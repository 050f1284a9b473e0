using Foreshore.Guide.Support;
using NodaTime.Testing;

namespace Foreshore.Guide.Keeping;

/// <summary>A keeper of one's own, for what is computed outside the site.</summary>
internal static class Shelf
{
    public static Kept Empty(long mostBytes = 64 << 20) => new(new FakeClock(GuideHost.UsualNow), new ComputeTurns(1), mostBytes);
}
