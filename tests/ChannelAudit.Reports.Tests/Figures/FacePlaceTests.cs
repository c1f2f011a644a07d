using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Face;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class FacePlaceTests
{
    [Theory]
    [InlineData("cheek", null, "cheek")]
    [InlineData("EMG Cheek 2", null, "cheek")]
    [InlineData("A1", "zygomaticus major", "cheek")]
    [InlineData("eyebrow", null, "brow")]
    [InlineData("A2", "corrugator supercilii", "brow")]
    [InlineData("A3", "orbicularis oculi", "eye")]
    [InlineData("A4", "orbicularis oris", "lip")]
    [InlineData("A5", "frontalis", "forehead")]
    [InlineData("A6", "mentalis", "chin")]
    [InlineData("A7", "platysma", "neck")]
    [InlineData("jaw", "zygomaticus major", "jaw")]
    public void NamesAndMusclesHavePlaces(string name, string? muscle, string place) => Assert.Equal(Of(place), Of(name, muscle));

    [Fact]
    public void EveryPlaceIsOne()
    {
        string[] names = ["forehead", "brow", "eye", "cheek", "jaw", "chin", "neck", "temple", "nose", "lip"];

        Assert.Equal(names.Length, names.Select(name => Of(name)).OfType<FacePlace>().Distinct().Count());
        Assert.Null(Of("EMG 4"));
        Assert.Null(Of("deltoid"));
    }

    [Theory]
    [InlineData("cheek", "left", true)]
    [InlineData("cheek", "right", false)]
    [InlineData("right cheek", null, false)]
    [InlineData("right cheek", "left", true)]
    [InlineData("cheek", null, true)]
    public void TheParticipantsLeftIsOnTheRight(string name, string? side, bool isOnTheRight)
    {
        FacePlace place = Of(name, null, side)!.Value;

        Assert.Equal(isOnTheRight, place.X > 0.5f);
        Assert.Equal(Math.Abs(Of("cheek")!.Value.X - 0.5f), Math.Abs(place.X - 0.5f), 5);
    }

    [Fact]
    public void APositionWinsAndCountsFromEarToEar()
    {
        FacePlace left = Place(0, 0.25);
        FacePlace middle = Place(0.5, 0.25);
        FacePlace right = Place(1, 0.25);

        Assert.Equal((0.5f, 0.25f), (middle.X, middle.Y));
        Assert.Equal(0.5f - FaceSketch.HalfWidth, left.X, 5);
        Assert.Equal(0.5f + FaceSketch.HalfWidth, right.X, 5);

        static FacePlace Place(double x, double y)
        {
            PilotSite site = Site("cheek", "zygomaticus major", "right");
            return FacePlace.Of(site with { Setup = site.Setup! with { Position = [x, y] } })!.Value;
        }
    }

    private static FacePlace? Of(string name, string? muscle = null, string? side = null) => FacePlace.Of(Site(name, muscle, side));

    private static PilotSite Site(string name, string? muscle, string? side) => new()
    {
        Name = name,
        Setup = new SiteSetup { Name = name, Channel = name, Muscle = muscle, Side = side },
        Verdict = Grade.Pass,
        IsAssessed = true,
    };
}
