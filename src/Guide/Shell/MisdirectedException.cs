namespace Foreshore.Guide.Shell;

/// <summary>A request came by a way on which it cannot be answered (RFC 9110, 15.5.20): a form by http where the site is https.</summary>
internal sealed class MisdirectedException() : Exception("Site:Address says https, and a form was asked for by http. Name the proxy in Proxy:Networks and let it send X-Forwarded-Proto.");
