using System.Globalization;
using System.Text;
using Cloveshed.App;
using Cloveshed.App.CommandLine;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
// Names of lots and Spanish words are more than ASCII; no byte order mark, because scripts read this.
Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return Entry.Run(args, World.OfThisProcess());
