using System.Collections.Immutable;

namespace ChannelAudit.Reports.Wording;

/// <summary>A reason code in words.</summary>
/// <param name="Code">The code.</param>
/// <param name="Name">What it is called in a sentence, without an article.</param>
/// <param name="WhatToDo">One line for a technician.</param>
/// <param name="TouchesSkin">Whether the advice leads to gel, adhesive, alcohol or skin, so that the caution belongs beside it.</param>
/// <param name="KeyMeasures">The measures whose value says most, most telling first.</param>
public sealed record ReasonWord(string Code, string Name, string WhatToDo, bool TouchesSkin, ImmutableArray<string> KeyMeasures);
