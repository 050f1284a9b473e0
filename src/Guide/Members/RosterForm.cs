namespace Foreshore.Guide.Members;

/// <summary>What the admins' page takes; flat, one for all its forms.</summary>
public sealed class RosterForm
{
    public Guid Id { get; set; }

    public Role? Role { get; set; }

    public string? Email { get; set; }

    public bool VisitorsMayRead { get; set; }
}
