using System.Security.Cryptography;
using System.Text;

namespace Cloveshed.Web.Setup;

/// <summary>Which text of season.json a form was made from: of two that change it at once, the second is told.</summary>
internal static class SettingsSeen
{
    public static string Of(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..16];
}
