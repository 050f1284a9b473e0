using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>What follows once somebody has shown who they are, and what is said where they have not.</summary>
public sealed class Admission(Sessions sessions, HalfWay halfWay, KnownDevices devices)
{
    public const string CodePage = "/sign-in/code";
    public const string SecondStepPage = "/account/second-step";

    /// <summary>Where to go next after the right password: in, to the second step, or to where it is set up.</summary>
    public async Task<string> ByPasswordAsync(HttpContext http, Member member, string back)
    {
        // A warden whose second factor is a passkey shows that, or a code on paper; the password alone must not add another.
        if (member.HasSecondStep || (member.NeedsTwoFactors && member.Passkeys.Count > 0))
        {
            halfWay.Keep(http, member.Id);
            return $"{CodePage}?back={Uri.EscapeDataString(LocalAddress.OrHome(back))}";
        }

        devices.Keep(http, member.Id);
        await sessions.BeginAsync(http, member, factors: 1, "password");
        return member.NeedsTwoFactors ? SecondStepPage : LocalAddress.OrHome(back);
    }

    public async Task<string> ByTwoFactorsAsync(HttpContext http, Member member, string way, string? back)
    {
        halfWay.Forget(http);
        devices.Keep(http, member.Id);
        await sessions.BeginAsync(http, member, factors: 2, way);
        return LocalAddress.OrHome(back);
    }

    /// <summary>The same words, status and length for everybody; with the time to wait where there is one.</summary>
    public static IReadOnlyList<FieldFault> Refuse(HttpContext http, SignInAnswer answer, string field, string words)
    {
        if (answer.Wait is not { } wait)
        {
            http.Response.StatusCode = StatusCodes.Status400BadRequest;
            return [new(field, words)];
        }

        http.Response.StatusCode = StatusCodes.Status429TooManyRequests;
        http.Response.Headers.RetryAfter = ((int)Math.Ceiling(wait.TotalSeconds)).ToString(System.Globalization.CultureInfo.InvariantCulture);
        return [new(field, wait <= Duration.FromMinutes(1)
            ? "Too many tries in a short time. Wait a minute, then try again."
            : $"Too many wrong tries. Wait {(int)Math.Ceiling(wait.TotalMinutes)} minutes, then try again; a passkey still works, and so does a device you have signed in on before.")];
    }
}
