namespace Foreshore.Guide.Members;

public static class RoleWords
{
    public static string Words(this Role role) => role switch
    {
        Role.Visitor => "visitor",
        Role.Member => "member",
        Role.Warden => "guide warden",
        Role.Admin => "admin",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "There is no such role."),
    };

    public static string Capital(Role role) => $"{char.ToUpperInvariant(role.Words()[0])}{role.Words()[1..]}";

    /// <summary>What stands beside the password, for admins who ask themselves whether anything does.</summary>
    public static string SecondStepWords(this Member member) => (member.HasSecondStep, member.Passkeys.Count) switch
    {
        (false, 0) => "No second step.",
        (true, 0) => "Second step: authenticator.",
        (false, _) => "Second step: passkey.",
        _ => "Second step: authenticator and passkey.",
    };
}
