using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Members;

/// <summary>What somebody invited fills in.</summary>
public sealed class InvitationForm
{
    public string? Email { get; set; }

    public string? Name { get; set; }

    public string? Password { get; set; }

    /// <summary>What is to be mended before an account can be made of it; <paramref name="clubWords"/> are no passwords here.</summary>
    public IReadOnlyList<FieldFault> Faults(Invitation invitation, params string?[] clubWords)
    {
        List<FieldFault> faults = [];
        var email = invitation.Email ?? Email;
        if (!Member.LooksLikeEmail(email))
            faults.Add(new("email", "Enter an e-mail address, like ana@example.org."));
        try
        {
            new Member("a@b", Name ?? "", Role.Member, default).CallThemselves(Name ?? "");
        }
        catch (NotAcceptedException fault)
        {
            faults.Add(new("name", fault.Message));
        }

        if (Passwords.Fault(Password, [email, Name, .. clubWords]) is { } words)
            faults.Add(new("password", words));
        return faults;
    }
}
