using System.CommandLine;
using CookAlong.Web.Security;

namespace CookAlong.Web.Cli;

/// <summary>HTTPS on the home network, by a certificate authority of the household's own.</summary>
static class HttpsVerb
{
    // Written in 2026: a clock that says less has lost its battery, and what it signed would be refused by every device.
    const int Earliest = 2026;

    public static Command Create() => new("https", "HTTPS on the home network, by a certificate authority of the household's own that each device is told once to trust.")
    {
        Part("on", "Make the household's authority. The server has HTTPS from its next start. Exit 0 = it is on, 1 = failed, 2 = bad input.", On),
        Part("off", "Destroy the household's authority for good; one made later must be installed anew. Exit 0 = it is off, 1 = failed, 2 = bad input.", Off),
        Part("status", "Say whether HTTPS is on, for which names, and the fingerprint to compare. Exit 0 = on, 1 = off, 2 = bad input.", Status),
    };

    static Command Part(string name, string description, Func<HouseSettings, TimeProvider, TextWriter, int> act)
    {
        var data = HouseOptions.Data();
        var hosts = HouseOptions.Hosts();
        var port = HouseOptions.HttpsPort();
        var part = new Command(name, description) { data, hosts, port };
        part.SetAction(parsed =>
        {
            if (parsed.Settings(new("data", parsed.GetValue(data)), new("hosts", parsed.GetValue(hosts)), new("https_port", parsed.GetValue(port))) is not { } settings)
            {
                return ExitCode.BadInput;
            }

            try
            {
                return act(settings, TimeProvider.System, parsed.InvocationConfiguration.Output);
            }
            catch (Exception failed) when (failed is AuthorityException or IOException or UnauthorizedAccessException)
            {
                parsed.InvocationConfiguration.Error.WriteLine(failed.Message);
                return ExitCode.Failed;
            }
        });
        return part;
    }

    public static int On(HouseSettings settings, TimeProvider time, TextWriter output)
    {
        if (AuthorityFiles.Read(settings) is null)
        {
            if (time.GetUtcNow().Year < Earliest)
            {
                output.WriteLine($"This machine's clock says {time.GetUtcNow():yyyy-MM-dd}. Set it first: what is signed by a wrong clock is refused.");
                return ExitCode.Failed;
            }

            AuthorityFiles.Write(settings, HomeAuthority.Make(HomeNames.OfThisMachine(settings.Hosts), time.GetUtcNow()));
            output.WriteLine("The household has an authority of its own now. Start the server again, and open its page /secure on each device.");
        }

        return Status(settings, time, output);
    }

    static int Off(HouseSettings settings, TimeProvider time, TextWriter output)
    {
        output.WriteLine(AuthorityFiles.Destroy(settings)
            ? "The authority's key is destroyed. Start the server again; then take the authority off each device too, in the settings where it was installed."
            : "HTTPS is off.");
        return ExitCode.Done;
    }

    static int Status(HouseSettings settings, TimeProvider time, TextWriter output)
    {
        if (AuthorityFiles.Read(settings) is not { } authority)
        {
            output.WriteLine("HTTPS is off. 'https on' makes an authority for this household.");
            return ExitCode.Failed;
        }

        var names = HomeNames.OfThisMachine(settings.Hosts);
        output.WriteLine($"HTTPS is on, port {settings.HttpsPort}. The server renews its certificate by itself.");
        output.WriteLine($"Authority    {authority.Certificate.GetNameInfo(System.Security.Cryptography.X509Certificates.X509NameType.SimpleName, forIssuer: false)}, until {authority.Certificate.NotAfter:yyyy-MM-dd}");
        output.WriteLine($"Fingerprint  {authority.Fingerprint}   (SHA-256; compare it with what a device shows)");
        output.WriteLine($"Names        {string.Join(", ", names.Names)}");
        output.WriteLine($"Addresses    {string.Join(", ", names.Addresses)}   (a missing one, such as a container's host, is added with --hosts)");
        return ExitCode.Done;
    }
}
