using Foreshore.Guide.Support;

namespace Foreshore.Guide.Elevation;

/// <summary>Class fixture: the demo guide on a real port of this machine, where limits and addresses are real, seen by an admin.</summary>
public sealed class LocalDemo(TestCluster cluster) : GuideHost(cluster, withDemo: true, onRealPort: true)
{
    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        await this.SignInAsync(Client, Members.Role.Admin);
    }
}
