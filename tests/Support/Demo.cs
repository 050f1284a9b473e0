using Foreshore.Guide.Database;
using Foreshore.Guide.Demo;
using NodaTime.Testing;

namespace Foreshore.Guide.Support;

/// <summary>Loads the demo guide as of the tests' own time.</summary>
internal static class Demo
{
    public static async Task LoadAsync(string appConnection)
    {
        await using var db = GuideConnection.Open(appConnection);
        await DemoGuide.LoadAsync(db, new FakeClock(GuideHost.UsualNow));
    }
}
