using System.Buffers.Text;
using System.Formats.Cbor;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;

namespace CookAlong.Web.Tests.Household;

/// <summary>
/// A device with one passkey, without one: W3C, Web Authentication Level 2, 6.1 (authenticator data) and 6.5.1 (attested credential
/// data), ES256 keys as COSE (RFC 9053, 7.1.1), attestation "none" (8.7).
/// </summary>
sealed class SoftPasskey : IDisposable
{
    readonly ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);

    public byte[] Id { get; set; } = RandomNumberGenerator.GetBytes(32);

    public byte[] UserHandle { get; set; } = [];

    /// <summary>Said at each answer; the device's own would grow.</summary>
    public uint SignCount { get; set; } = 1;

    public string Origin { get; set; } = "http://localhost";

    public void Dispose() => key.Dispose();

    /// <summary>The answer to a question that asks for a new passkey.</summary>
    public JsonObject Make(JsonNode question)
    {
        UserHandle = Base64Url.DecodeFromChars(question["user"]!["id"]!.GetValue<string>());
        var attestation = new CborWriter();
        attestation.WriteStartMap(3);
        attestation.WriteTextString("fmt");
        attestation.WriteTextString("none");
        attestation.WriteTextString("attStmt");
        attestation.WriteStartMap(0);
        attestation.WriteEndMap();
        attestation.WriteTextString("authData");
        attestation.WriteByteString(DataOf(question["rp"]!["id"]!.GetValue<string>(), Attested()));
        attestation.WriteEndMap();
        return Answer(new()
        {
            ["clientDataJSON"] = Text(ClientData("webauthn.create", question)),
            ["attestationObject"] = Text(attestation.Encode()),
        });
    }

    /// <summary>The answer to a question that asks who it is.</summary>
    public JsonObject Sign(JsonNode question)
    {
        var data = DataOf(question["rpId"]!.GetValue<string>(), []);
        var client = ClientData("webauthn.get", question);
        return Answer(new()
        {
            ["clientDataJSON"] = Text(client),
            ["authenticatorData"] = Text(data),
            ["signature"] = Text(key.SignData([.. data, .. SHA256.HashData(client)], HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence)),
            ["userHandle"] = Text(UserHandle),
        });
    }

    JsonObject Answer(JsonObject response) => new() { ["id"] = Text(Id), ["rawId"] = Text(Id), ["type"] = "public-key", ["response"] = response, ["clientExtensionResults"] = new JsonObject() };

    byte[] ClientData(string type, JsonNode question) => Encoding.UTF8.GetBytes(
        new JsonObject { ["type"] = type, ["challenge"] = question["challenge"]!.GetValue<string>(), ["origin"] = Origin, ["crossOrigin"] = false }.ToJsonString());

    byte[] DataOf(string place, byte[] attested)
    {
        const byte Present = 0x01, Verified = 0x04, HasAttested = 0x40;
        var flags = (byte)(Present | Verified | (attested.Length > 0 ? HasAttested : 0));
        return [.. SHA256.HashData(Encoding.UTF8.GetBytes(place)), flags, .. BigEndian(SignCount), .. attested];
    }

    byte[] Attested()
    {
        var point = key.ExportParameters(includePrivateParameters: false).Q;
        var cose = new CborWriter(CborConformanceMode.Ctap2Canonical);
        cose.WriteStartMap(5);
        foreach (var (label, value) in new[] { (1, 2), (3, -7), (-1, 1) })
        {
            cose.WriteInt32(label);
            cose.WriteInt32(value);
        }

        cose.WriteInt32(-2);
        cose.WriteByteString(point.X!);
        cose.WriteInt32(-3);
        cose.WriteByteString(point.Y!);
        cose.WriteEndMap();
        return [.. new byte[16], (byte)(Id.Length >> 8), (byte)Id.Length, .. Id, .. cose.Encode()];
    }

    static byte[] BigEndian(uint number) => [(byte)(number >> 24), (byte)(number >> 16), (byte)(number >> 8), (byte)number];

    static string Text(byte[] data) => Base64Url.EncodeToString(data);
}
