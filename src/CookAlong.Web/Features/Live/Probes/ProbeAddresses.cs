using System.Security.Cryptography;
using System.Text.Json;
using CookAlong.Domain;
using CookAlong.Domain.Runs;
using Microsoft.AspNetCore.DataProtection;

namespace CookAlong.Web.Features.Live.Probes;

/// <summary>
/// An address to which a thermometer posts its readings by itself. It names run, step and whose word it is, sealed with the
/// household's own key: whoever has it can note readings of that one step while the meal is cooked, and nothing else.
/// </summary>
public sealed class ProbeAddresses(IDataProtectionProvider protection)
{
    readonly IDataProtector seal = protection.CreateProtector("CookAlong.Probe.1");

    public string Of(RunId run, StepId step, PersonId by) => $"/probe/{seal.Protect(JsonSerializer.Serialize(new Sealed(run.Value, step.Value, by.Value)))}";

    /// <summary>Null for an address that was never given out.</summary>
    public (RunId Run, StepId Step, PersonId By)? Read(string token)
    {
        try
        {
            return JsonSerializer.Deserialize<Sealed>(seal.Unprotect(token)) is { } one ? (new RunId(one.Run), new StepId(one.Step), new PersonId(one.By)) : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    sealed record Sealed(Guid Run, string Step, Guid By);
}
