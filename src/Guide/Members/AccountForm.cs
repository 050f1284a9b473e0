namespace Foreshore.Guide.Members;

/// <summary>What the account's page takes; flat, one for all its forms.</summary>
public sealed class AccountForm
{
    public string? Name { get; set; }

    public string? Current { get; set; }

    public string? Wanted { get; set; }

    /// <summary>A session to end or a passkey to take away.</summary>
    public Guid? Id { get; set; }

    /// <summary>Erasing is meant.</summary>
    public bool IsMeant { get; set; }
}
