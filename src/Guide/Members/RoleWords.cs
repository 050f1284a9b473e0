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
}
