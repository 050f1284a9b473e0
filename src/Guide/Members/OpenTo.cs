using Foreshore.Guide.Shell;
using Microsoft.AspNetCore.Authorization;

namespace Foreshore.Guide.Members;

/// <summary>On a page or an endpoint: the least role it is open to. Without it, it is open to whoever may read the guide.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class OpenToAttribute(Role least) : Attribute, IAuthorizeData, IAuthorizationRequirementData
{
    public Role Least { get; } = least;

    /// <summary>Also for a warden or admin who has yet to set up a second step.</summary>
    public bool OneFactorWillDo { get; init; }

    public string? Policy { get; set; }

    public string? Roles { get; set; }

    public string? AuthenticationSchemes { get; set; }

    public IEnumerable<IAuthorizationRequirement> GetRequirements() => [new LeastRole(Least, OneFactorWillDo)];
}

/// <summary><see cref="Role.Visitor"/> stands for whoever may read: members, and visitors where the club lets them in.</summary>
internal sealed record LeastRole(Role Role, bool OneFactorWillDo = false) : IAuthorizationRequirement;

internal sealed class LeastRoleHandler(MastheadQueries mastheads) : AuthorizationHandler<LeastRole>
{
    protected override async Task HandleRequirementAsync(AuthorizationHandlerContext context, LeastRole requirement)
    {
        if (context.Resource is not HttpContext http)
            return;

        var role = requirement.OneFactorWillDo ? http.SignedIn()?.Role ?? Role.Visitor : http.Reader().Role;
        if (requirement.Role > Role.Visitor ? role >= requirement.Role : role > Role.Visitor || (await mastheads.CurrentAsync(http.RequestAborted)).VisitorsMayRead)
            context.Succeed(requirement);
    }
}
