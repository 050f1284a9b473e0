using Foreshore.Guide.Members;
using Xunit;

namespace Foreshore.Guide.Browser.Readme;

/// <summary>README's walks of a member and of a warden, one after the other in two browsers: what the one sends, the other lets in.</summary>
public sealed class MemberWalkTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    [Fact]
    public void Every_sentence_is_known()
    {
        Assert.Equal(Contribute.Steps.Keys, WalkThrough.Named(Contribute.Name).Steps);
        Assert.Equal(Moderate.Steps.Keys, WalkThrough.Named(Moderate.Name).Steps);
    }

    [Fact]
    public async Task On_a_phone_in_the_hand_of_a_member_and_then_on_a_wardens_desk()
    {
        await using var member = await site.VisitAsync(Device.Phone, role: Role.Member);
        await WalkThrough.Named(Contribute.Name).WalkAsync(member.Page, Contribute.Steps);
        Assert.Empty(member.Complaints);

        await using var warden = await site.VisitAsync(Device.Desktop, role: Role.Warden);
        await WalkThrough.Named(Moderate.Name).WalkAsync(warden.Page, Moderate.Steps);
        Assert.Empty(warden.Complaints);
    }
}

/// <summary>The same the other way round: the member at a desk, the warden on a phone.</summary>
public sealed class DeskWalkTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    [Fact]
    public async Task At_a_members_desk_and_then_on_a_wardens_phone()
    {
        await using var member = await site.VisitAsync(Device.Desktop, role: Role.Member);
        await WalkThrough.Named(Contribute.Name).WalkAsync(member.Page, Contribute.Steps);
        await using var warden = await site.VisitAsync(Device.Phone, role: Role.Warden);
        await WalkThrough.Named(Moderate.Name).WalkAsync(warden.Page, Moderate.Steps);
        Assert.Empty(member.Complaints);
        Assert.Empty(warden.Complaints);
    }
}
