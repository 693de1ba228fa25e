namespace Cloveshed.Core.Planning;

/// <summary>What a yes-or-no or a number of units in the polish is about.</summary>
internal enum ChoiceKind { Run, Finish, Place, Fill, Sale, Whole, Part }

/// <summary>
/// One choice of the polish and its column. A and B by kind: Run lot (-1: sorted-out bulbs) and line; Finish lot's row; Place spot; Fill order line and product;
/// Sale market row; Whole order; Part line of a whole order and product. Week: in which it is.
/// </summary>
internal readonly record struct PolishChoice(ChoiceKind Kind, int Column, int A, int B, int Week, double Most)
{
    /// <summary>False for a number of units.</summary>
    internal bool IsYesNo => Kind is not (ChoiceKind.Fill or ChoiceKind.Sale or ChoiceKind.Part);

    /// <summary>What is shipped, as against what is run and where it stands.</summary>
    internal bool IsOrder => Kind is ChoiceKind.Fill or ChoiceKind.Sale or ChoiceKind.Whole or ChoiceKind.Part;
}
