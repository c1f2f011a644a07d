namespace ChannelAudit.Findings.Rules;

/// <summary>Values by the names of measures: asked of every trial and of single seconds, so most are structures that take no memory.</summary>
internal interface IMeasured
{
    /// <summary>A measure's value, or null.</summary>
    /// <param name="measure">The measure's name.</param>
    double? ValueOf(string measure);
}
