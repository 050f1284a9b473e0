namespace Foreshore.Guide.Members;

/// <summary>What the admins' page takes; flat, one for all its forms.</summary>
public sealed class RosterForm
{
    public Guid Id { get; set; }

    public Role? Role { get; set; }

    /// <summary>What was asked for, not the contrary of what is: sending twice changes nothing more.</summary>
    public bool Belongs { get; set; }

    public string? Email { get; set; }

    public bool VisitorsMayRead { get; set; }
}
