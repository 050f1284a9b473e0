using Foreshore.Guide.Hosting;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.StaticAssets;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>Accounts, sessions and who may what, as parts of the site.</summary>
internal static class Membership
{
    private static readonly string[] OpenWhileSettingUp = [Admission.SecondStepPage, "/sign-out", SignInAddress.Page, "/theme", "/health", "/error", "/status"];

    public static void AddMembership(this IServiceCollection services, SiteAddress address)
    {
        services.AddSingleton(address);
        services.AddSingleton<TimeProvider, SiteClock>();
        services.AddIdentityCore<Member>();
        services.AddScoped<IUserStore<Member>, MemberStore>();
        services.AddScoped<IPasskeyHandler<Member>, PasskeyHandler<Member>>();
        // One hasher for all requests: it keeps nothing but its settings.
        services.AddSingleton<IPasswordHasher<Member>, PasswordHasher<Member>>();
        services.Configure<PasswordHasherOptions>(options => options.IterationCount = Passwords.Rounds);
        services.Configure<IdentityPasskeyOptions>(options =>
        {
            options.ServerDomain = address.PasskeyDomain;
            options.UserVerificationRequirement = "required";
            options.ResidentKeyRequirement = "required";
        });
        services.AddSingleton<Passwords>();
        services.AddSingleton<SignInLimits>();
        services.AddSingleton<SignIns>();
        services.AddSingleton<KnownDevices>();
        services.AddSingleton<HeldUp>();
        services.AddSingleton<AuthenticatorSeal>();
        services.AddSingleton<Sessions>();
        services.AddSingleton<Invitations>();
        services.AddSingleton<NewStarts>();
        services.AddSingleton<Letters>();
        services.AddSingleton<HalfWay>();
        services.AddSingleton<Admission>();
        services.AddSingleton<Accounts>();
        services.AddSingleton<Erasure>();
        services.AddSingleton(ErasureNotes.Nowhere);
        services.AddSingleton<Roster>();
        services.AddScoped<Passkeys>();
        services.AddSingleton<MemberCookie>();
        services.AddAuthentication(Sessions.Scheme).AddCookie(Sessions.Scheme, options => MemberCookie.Describe(options, address));
        services.AddSingleton<IAuthorizationHandler, LeastRoleHandler>();
        // What says nothing of itself is open to whoever may read the guide, and to nobody else.
        services.AddAuthorizationBuilder().SetFallbackPolicy(new AuthorizationPolicyBuilder().AddRequirements(new LeastRole(Role.Visitor)).Build());
        services.Configure<AntiforgeryOptions>(options => options.Cookie = address.Cookie("foreshore-form", SameSiteMode.Strict));
    }

    /// <summary>After routing: who it is, whether they still have a second step to set up, whether the page is theirs.</summary>
    public static void UseMembership(this WebApplication app)
    {
        app.UseAuthentication();
        app.Use((http, next) =>
        {
            if (http.SignedIn() is null)
                return next(http);

            KeepOutOfCaches(http);
            return http.SignedIn()!.MustSetUpSecondStep && !IsOpenWhileSettingUp(http) ? LeadToSetUpAsync(http) : next(http);
        });
        app.UseAuthorization();
    }

    /// <summary>What one member sees is for nobody else: no cache keeps it, and none gives it to the next one at this machine.</summary>
    private static void KeepOutOfCaches(HttpContext http) => http.Response.OnStarting(() =>
    {
        http.Response.Headers.CacheControl = "private, no-store";
        return Task.CompletedTask;
    });

    private static bool IsOpenWhileSettingUp(HttpContext http) =>
        http.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null
        || OpenWhileSettingUp.Any(open => http.Request.Path.StartsWithSegments(open));

    private static Task LeadToSetUpAsync(HttpContext http)
    {
        if (http.Request.Path.StartsWithSegments("/api") || http.Request.Path.StartsWithSegments("/openapi"))
            http.Response.StatusCode = StatusCodes.Status403Forbidden;
        else
            http.Response.Redirect(Admission.SecondStepPage);
        return Task.CompletedTask;
    }

    /// <summary>The framework asks for the time in its own way; it gets the site's.</summary>
    private sealed class SiteClock(IClock clock) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => clock.GetCurrentInstant().ToDateTimeOffset();
    }
}
