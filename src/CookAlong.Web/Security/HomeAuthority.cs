using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace CookAlong.Web.Security;

/// <summary>The household's own certificate authority: a key that never leaves the data folder, and a certificate that devices are told to trust.</summary>
public sealed class HomeAuthority(X509Certificate2 certificate)
{
    /// <summary>So long that nobody installs it twice on a tablet's life.</summary>
    static readonly TimeSpan Lasts = TimeSpan.FromDays(3650);

    /// <summary>
    /// Days that a server's certificate is good for. Apple's platforms refuse more than 825 from an authority that the user added
    /// (support.apple.com, "Requirements for trusted certificates in iOS 13 and macOS 10.15", from memory), public ones are held to 398 and less
    /// (CA/Browser Forum, ballots SC-031 and SC-081, from memory). Since it renews itself there is no reason to come near.
    /// </summary>
    public static readonly TimeSpan ServerLasts = TimeSpan.FromDays(90);

    // A device's clock may be behind this machine's.
    static readonly TimeSpan Earlier = TimeSpan.FromDays(1);

    const string ServerAuthentication = "1.3.6.1.5.5.7.3.1";

    /// <summary>With its private key.</summary>
    public X509Certificate2 Certificate => certificate;

    /// <summary>What devices install: no secret. DER.</summary>
    public byte[] Public => certificate.RawData;

    /// <summary>SHA-256 of <see cref="Public"/>, as devices show it: pairs of hexadecimal digits.</summary>
    public string Fingerprint => string.Join(' ', Convert.ToHexString(SHA256.HashData(certificate.RawData)).Chunk(2).Select(pair => new string(pair)));

    public static HomeAuthority Make(HomeNames names, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var about = new X500DistinguishedNameBuilder();
        about.AddOrganizationName("CookAlong");
        about.AddCommonName($"CookAlong at {names.Names[0]}, {now:yyyy-MM-dd}");
        var request = new CertificateRequest(about.Build(), key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(X509BasicConstraintsExtension.CreateForCertificateAuthority(pathLengthConstraint: 0));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, critical: true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(NameConstraints.Permitting(
            names.Names.Where(name => !name.Contains('.', StringComparison.Ordinal)).Concat(HostNames.HomeSuffixes.Select(suffix => suffix[1..])).Distinct(), HomeNames.Ranges));
        return new(request.CreateSelfSigned(now - Earlier, now + Lasts));
    }

    /// <summary>A certificate for this server with a key of its own, good for <see cref="ServerLasts"/>. It is kept in memory alone.</summary>
    public X509Certificate2 Issue(HomeNames names, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={names.Names[0]}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(X509BasicConstraintsExtension.CreateForEndEntity(critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(ServerAuthentication)], critical: false));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(certificate, includeKeyIdentifier: true, includeIssuerAndSerial: false));
        request.CertificateExtensions.Add(Names(names));

        // 127 bits of chance, and positive (RFC 5280, 4.1.2.2).
        var serial = RandomNumberGenerator.GetBytes(16);
        serial[0] &= 0x7F;
        var until = now + ServerLasts < certificate.NotAfter ? now + ServerLasts : certificate.NotAfter;
        using var bare = request.Create(certificate, now - Earlier, until, serial);
        using var whole = bare.CopyWithPrivateKey(key);

        // Some platforms serve only what was loaded from such a file.
        return X509CertificateLoader.LoadPkcs12(whole.Export(X509ContentType.Pkcs12), password: null);
    }

    static X509Extension Names(HomeNames names)
    {
        var subject = new SubjectAlternativeNameBuilder();
        foreach (var name in names.Names)
        {
            subject.AddDnsName(name);
        }

        foreach (var address in names.Addresses)
        {
            subject.AddIpAddress(address);
        }

        return subject.Build();
    }
}
