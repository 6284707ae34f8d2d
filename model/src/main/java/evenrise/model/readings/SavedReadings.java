package evenrise.model.readings;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** What somebody read on site of a plan, with one instrument or several, on one day or on several. */
@FileRecord
public record SavedReadings(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "Cautions for whoever works from this file", byDefault = "[]")
        List<String> cautions,

        @Field(meaning = "What the project is called, for people", byDefault = "\"\"")
        String project,

        @Field(meaning = "SHA-256 of the project's file that the page was made of", atLeast = 64)
        String projectSha256,

        @Field(
                meaning = "SHA-256 of what the plan places and sets; figures and the layout of its file do not count",
                atLeast = 64)
        String planSha256,

        @Field(meaning = "What was read with", byDefault = "[]")
        List<SavedMeter> meters,

        @Field(meaning = "Poles of loads that were read", byDefault = "[]")
        List<SavedPole> poles,

        @Field(meaning = "Panels, nodes and the supply as read", byDefault = "[]")
        List<SavedPlace> places,

        @Field(meaning = "Residual-current devices as tested", byDefault = "[]")
        List<SavedDevice> devices)
        implements SavedReadingsBuilder.With {

    /** The format that this software reads and its page writes. */
    public static final String FORMAT = "evenrise-readings/1";

    public SavedReadings {
        Contract.check(
                SavedReadings.class,
                format,
                cautions,
                project,
                projectSha256,
                planSha256,
                meters,
                poles,
                places,
                devices);
        cautions = List.copyOf(cautions);
        meters = List.copyOf(meters);
        poles = List.copyOf(poles);
        places = List.copyOf(places);
        devices = List.copyOf(devices);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SavedReadingsBuilder builder() {
        return Defaults.into(SavedReadingsBuilder.unset(), SavedReadings.class).format(FORMAT);
    }
}
