package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.OptionalDouble;

/** How long work on the plant takes, by kind, in minutes for one crew. What is left out has a usual value, marked as such. */
@FileRecord
public record WorkTimes(
        @Field(meaning = "A breaker re-terminated in its panel", min = 0, max = 10_000, optional = true)
        OptionalDouble samePanelMinutes,

        @Field(
                meaning = "A breaker that goes to another panel, with conductors drawn or lengthened",
                min = 0,
                max = 10_000,
                optional = true)
        OptionalDouble otherPanelMinutes,

        @Field(meaning = "A breaker that is not there yet, with its conductors", min = 0, max = 10_000, optional = true)
        OptionalDouble newCircuitMinutes,

        @Field(
                meaning = "A control lead on another output, with both ends where it reached before",
                min = 0,
                max = 10_000,
                optional = true)
        OptionalDouble leadMinutes,

        @Field(
                meaning = "A control lead drawn, since its breaker or its board is in another panel than before",
                min = 0,
                max = 10_000,
                optional = true)
        OptionalDouble drawnLeadMinutes,

        @Field(
                meaning = "A board set otherwise, or an output that has a time of its own",
                min = 0,
                max = 10_000,
                optional = true)
        OptionalDouble settingMinutes,

        @Field(
                meaning = "A panel or a board isolated, found dead, and brought back",
                min = 0,
                max = 10_000,
                optional = true)
        OptionalDouble isolationMinutes,

        @Field(
                meaning = "A system taken off and brought up again by its commands, and seen to run",
                min = 0,
                max = 10_000,
                optional = true)
        OptionalDouble shutdownMinutes,

        @Field(meaning = "A load switched off or on by hand", min = 0, max = 10_000, optional = true)
        OptionalDouble switchingMinutes,

        @Field(
                meaning = "A load that was worked on locked out, tested, labelled and tried",
                min = 0,
                max = 10_000,
                optional = true)
        OptionalDouble testMinutes,

        @Field(
                meaning = "A breaker of gear that is gone taken out, with its conductors capped and tagged",
                min = 0,
                max = 10_000,
                optional = true)
        OptionalDouble removalMinutes)
        implements WorkTimesBuilder.With {
    public WorkTimes {
        Contract.check(
                WorkTimes.class,
                samePanelMinutes,
                otherPanelMinutes,
                newCircuitMinutes,
                leadMinutes,
                drawnLeadMinutes,
                settingMinutes,
                isolationMinutes,
                shutdownMinutes,
                switchingMinutes,
                testMinutes,
                removalMinutes);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static WorkTimesBuilder builder() {
        return Defaults.into(WorkTimesBuilder.unset(), WorkTimes.class);
    }
}
