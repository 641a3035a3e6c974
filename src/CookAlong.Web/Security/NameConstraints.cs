using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace CookAlong.Web.Security;

/// <summary>What an authority may vouch for (RFC 5280, 4.2.1.10): whoever steals its key gets no further than the home.</summary>
static class NameConstraints
{
    const string Oid = "2.5.29.30";

    // GeneralName's choices, RFC 5280, 4.2.1.6.
    const int DnsName = 2;
    const int IpAddress = 7;

    /// <param name="names">Each stands for itself and all below it.</param>
    /// <remarks>The standard wants it critical; marked so, a device that does not know it refuses the authority altogether. Those that know it obey it either way.</remarks>
    public static X509Extension Permitting(IEnumerable<string> names, IEnumerable<IPNetwork> ranges)
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(new Asn1Tag(TagClass.ContextSpecific, 0)))
        {
            foreach (var name in names)
            {
                using (writer.PushSequence())
                {
                    writer.WriteCharacterString(UniversalTagNumber.IA5String, name, new Asn1Tag(TagClass.ContextSpecific, DnsName));
                }
            }

            foreach (var range in ranges)
            {
                using (writer.PushSequence())
                {
                    writer.WriteOctetString([.. range.BaseAddress.GetAddressBytes(), .. Mask(range)], new Asn1Tag(TagClass.ContextSpecific, IpAddress));
                }
            }
        }

        return new X509Extension(Oid, writer.Encode(), critical: false);
    }

    static byte[] Mask(IPNetwork range)
    {
        var mask = new byte[range.BaseAddress.GetAddressBytes().Length];
        for (var bit = 0; bit < range.PrefixLength; bit++)
        {
            mask[bit / 8] |= (byte)(0x80 >> (bit % 8));
        }

        return mask;
    }
}
