using System.Globalization;
using System.Net;
using Cloveshed.App.Words;

namespace Cloveshed.App.Serving;

/// <summary>Where the web application may listen: on this machine only, until people sign in.</summary>
internal static class ServeAddress
{
    public const string Default = "http://127.0.0.1:8080";

    /// <summary>This machine, at a port.</summary>
    public static string At(int port) => string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}");

    /// <summary>Why it can't listen there, as a whole sentence; null where it can. Several addresses have ; between.</summary>
    public static string? Obstacle(string urls, Phrasebook phrases)
    {
        foreach (string url in urls.Split(';'))
        {
            if (!Uri.TryCreate(url, UriKind.Absolute, out Uri? address) || address.Scheme != Uri.UriSchemeHttp || address.PathAndQuery != "/" || address.UserInfo.Length > 0
                || (address.Host == "localhost" && address.Port == 0)) // the host needs one port for both families
            {
                return phrases.Say(Phrase.ServeNotAnAddress, url, Default);
            }

            if (!(address.Host == "localhost" || (IPAddress.TryParse(address.Host, out IPAddress? ip) && IPAddress.IsLoopback(ip))))
            {
                return phrases.Say(Phrase.ServeNotHere, url, Default);
            }
        }

        return null;
    }
}
