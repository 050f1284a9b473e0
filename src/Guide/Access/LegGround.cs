namespace Foreshore.Guide.Access;

/// <summary>The worst that one walks on along a leg: it sets the pace when one must get back.</summary>
public enum LegGround { Unknown, Firm, WetRock, Weed, Boulders, SoftGround }

/// <summary>Whether one finds the leg at night: by lamps, or because a member has walked it in the dark.</summary>
public enum LightAtNight { Unknown, Lit, KnownInTheDark, NotKnownInTheDark }

/// <summary>Whether the tide cuts a leg off. Unknown until somebody answers, and never the same as never.</summary>
public enum TidalCut { Unknown, Never, Crossing }
