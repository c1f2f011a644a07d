using ChannelAudit.Reports.Pages;

namespace ChannelAudit.Reports.Tests.Pages;

public sealed class StudySectionTests
{
    [Fact]
    public void NothingOddIsNoSection()
    {
        HtmlText html = new();
        StudySection.Write(html, []);

        Assert.Empty(html.ToString());
    }

    [Fact]
    public void EachIsARowAndLabelsAreNoMarkup()
    {
        HtmlText html = new();
        StudySection.Write(html, SampleStudy.Odd);
        string page = html.ToString();

        Assert.Equal(3, page.Split("<th scope=\"row\">").Length - 1);
        Assert.Contains("<bdi>p02</bdi>, <bdi>p09</bdi>", page, StringComparison.Ordinal);
        Assert.Contains("Changes no verdict", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", page, StringComparison.Ordinal);
    }
}
