using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Members;

/// <summary>
/// What the framework's handler of passkeys asks about members. It only reads: changes are verbs of <see cref="Member"/>, saved by those
/// who call them.
/// </summary>
internal sealed class MemberStore(IDbContextFactory<GuideDb> database) : IUserPasskeyStore<Member>
{
    private const string OnlyReads = "Members are changed by their own verbs.";

    public Task<string> GetUserIdAsync(Member user, CancellationToken cancellationToken) => Task.FromResult(user.Id.ToString());

    public Task<string?> GetUserNameAsync(Member user, CancellationToken cancellationToken) => Task.FromResult<string?>(user.Email);

    public Task<string?> GetNormalizedUserNameAsync(Member user, CancellationToken cancellationToken) => Task.FromResult<string?>(user.Email);

    public Task<Member?> FindByIdAsync(string userId, CancellationToken cancellationToken) =>
        Guid.TryParse(userId, out var id) ? FindAsync(members => members.Where(m => m.Id == id), cancellationToken) : Task.FromResult<Member?>(null);

    public Task<Member?> FindByNameAsync(string normalizedUserName, CancellationToken cancellationToken) =>
        FindAsync(members => members.Where(m => m.Email == Member.Folded(normalizedUserName)), cancellationToken);

    public Task<Member?> FindByPasskeyIdAsync(byte[] credentialId, CancellationToken cancellationToken) =>
        FindAsync(members => members.Where(m => m.Passkeys.Any(p => p.CredentialId == credentialId)), cancellationToken);

    public Task<IList<UserPasskeyInfo>> GetPasskeysAsync(Member user, CancellationToken cancellationToken) =>
        Task.FromResult<IList<UserPasskeyInfo>>([.. user.Passkeys.Select(p => p.ForHandler())]);

    public Task<UserPasskeyInfo?> FindPasskeyAsync(Member user, byte[] credentialId, CancellationToken cancellationToken) =>
        Task.FromResult(user.Passkeys.FirstOrDefault(p => p.CredentialId.AsSpan().SequenceEqual(credentialId))?.ForHandler());

    public Task<IdentityResult> CreateAsync(Member user, CancellationToken cancellationToken) => throw new NotSupportedException(OnlyReads);

    public Task<IdentityResult> UpdateAsync(Member user, CancellationToken cancellationToken) => throw new NotSupportedException(OnlyReads);

    public Task<IdentityResult> DeleteAsync(Member user, CancellationToken cancellationToken) => throw new NotSupportedException(OnlyReads);

    public Task SetUserNameAsync(Member user, string? userName, CancellationToken cancellationToken) => throw new NotSupportedException(OnlyReads);

    public Task SetNormalizedUserNameAsync(Member user, string? normalizedName, CancellationToken cancellationToken) => throw new NotSupportedException(OnlyReads);

    public Task AddOrUpdatePasskeyAsync(Member user, UserPasskeyInfo passkey, CancellationToken cancellationToken) => throw new NotSupportedException(OnlyReads);

    public Task RemovePasskeyAsync(Member user, byte[] credentialId, CancellationToken cancellationToken) => throw new NotSupportedException(OnlyReads);

    /// <summary>Its context is opened anew for each question.</summary>
    public void Dispose() { }

    private async Task<Member?> FindAsync(Func<IQueryable<Member>, IQueryable<Member>> which, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await which(db.Members.AsNoTracking().Include(m => m.Passkeys).Where(m => m.RemovedAt == null)).SingleOrDefaultAsync(cancel);
    }
}
