using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace CookAlong.Web.Security;

/// <summary>Where the household's authority is kept: two PEM files that only the server's own user may read. While they are there, HTTPS is on.</summary>
static class AuthorityFiles
{
    const UnixFileMode OwnOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    public static string Folder(HouseSettings settings) => Path.Combine(settings.Data, "https");

    static string CertificateFile(HouseSettings settings) => Path.Combine(Folder(settings), "authority.pem");

    static string KeyFile(HouseSettings settings) => Path.Combine(Folder(settings), "authority.key");

    /// <returns>Null when HTTPS is off.</returns>
    /// <exception cref="AuthorityException">The files cannot be read, are damaged, or do not belong together.</exception>
    public static HomeAuthority? Read(HouseSettings settings)
    {
        try
        {
            return IsThere(settings) ? new(X509Certificate2.CreateFromPemFile(CertificateFile(settings), KeyFile(settings))) : null;
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException or CryptographicException or ArgumentException)
        {
            throw new AuthorityException(
                $"The household's authority in {Folder(settings)} cannot be used: {failed.Message} It must belong to the user that the server runs as. If it is damaged, 'https off' and 'https on' make another, which each device installs anew.", failed);
        }
    }

    public static bool IsThere(HouseSettings settings) => File.Exists(CertificateFile(settings));

    /// <summary>The key first: a certificate without its key would keep the server from starting.</summary>
    public static void Write(HouseSettings settings, HomeAuthority authority)
    {
        Data.HouseholdData.OpenFolder(settings.Data);
        Data.HouseholdData.OpenFolder(Folder(settings));
        using var key = authority.Certificate.GetECDsaPrivateKey()!;
        WriteOwn(KeyFile(settings), key.ExportPkcs8PrivateKeyPem());
        WriteOwn(CertificateFile(settings), authority.Certificate.ExportCertificatePem());
    }

    /// <summary>For good: nobody can make a certificate in the authority's name any more.</summary>
    /// <returns>False when there was none.</returns>
    public static bool Destroy(HouseSettings settings)
    {
        var wasOn = IsThere(settings);
        if (Directory.Exists(Folder(settings)))
        {
            File.Delete(CertificateFile(settings));
            File.Delete(KeyFile(settings));
            Directory.Delete(Folder(settings));
        }

        return wasOn;
    }

    static void WriteOwn(string file, string text)
    {
        var how = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            how.UnixCreateMode = OwnOnly;
        }

        using var writer = new StreamWriter(file, how);
        writer.Write(text);
    }
}

/// <summary>Why the household's authority cannot be used, and what to do.</summary>
sealed class AuthorityException(string message, Exception? inner = null) : Exception(message, inner);
