using System.Security.Cryptography.X509Certificates;
using System.Xml.Linq;
using CookAlong.Web.Security;

namespace CookAlong.Web.Features.Secure;

/// <summary>The authority as a configuration profile, the file that Apple's devices install certificates from (payload type com.apple.security.root).</summary>
static class Profile
{
    public static string Of(HomeAuthority authority)
    {
        var name = authority.Certificate.GetNameInfo(X509NameType.SimpleName, forIssuer: false);

        // The same authority is the same profile: installed twice it is there once. Any 16 bytes of its fingerprint will do.
        var hash = Convert.FromHexString(authority.Fingerprint.Replace(" ", "", StringComparison.Ordinal));
        var dict = Dict(
            ("PayloadContent", new XElement("array", Dict(
                ("PayloadCertificateFileName", Text("cookalong.crt")),
                ("PayloadContent", new XElement("data", Convert.ToBase64String(authority.Public))),
                ("PayloadDisplayName", Text(name)),
                ("PayloadIdentifier", Text("cookalong.authority.certificate")),
                ("PayloadType", Text("com.apple.security.root")),
                ("PayloadUUID", Text(new Guid(hash.AsSpan(0, 16)).ToString().ToUpperInvariant())),
                ("PayloadVersion", new XElement("integer", 1))))),
            ("PayloadDescription", Text("Lets this device trust the kitchen’s server on the home network, and nothing beyond the home.")),
            ("PayloadDisplayName", Text(name)),
            ("PayloadIdentifier", Text("cookalong.authority")),
            ("PayloadType", Text("Configuration")),
            ("PayloadUUID", Text(new Guid(hash.AsSpan(16, 16)).ToString().ToUpperInvariant())),
            ("PayloadVersion", new XElement("integer", 1)));
        return $"""<?xml version="1.0" encoding="UTF-8"?>{'\n'}{new XElement("plist", new XAttribute("version", "1.0"), dict)}""";
    }

    static XElement Dict(params ReadOnlySpan<(string Key, XElement Value)> entries)
    {
        var dict = new XElement("dict");
        foreach (var (key, value) in entries)
        {
            dict.Add(new XElement("key", key), value);
        }

        return dict;
    }

    static XElement Text(string text) => new("string", text);
}
