package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/**
 * What all judges together say of a plan: the referee of hard rules, the electrical review, the peaks of events, and how
 * much of it rests on what nobody stated. It stands first wherever the plan is shown.
 */
@FileRecord
public record Assessment(
        @Field(meaning = "All of it in a sentence", atLeast = 1)
        String headline,

        @Field(meaning = "Hard rules broken, each place counted", min = 0)
        int hardRulesBroken,

        @Field(meaning = "Electrical limits broken: remarks of the grade breaks", min = 0)
        int limitsBroken,

        @Field(
                meaning = "Peaks of events over a node's inrush limit that is not asked to hold for them; where it is, "
                        + "they are hard rules",
                min = 0)
        int eventsOverLimit,

        @Field(meaning = "Electrical checks made, each check and place counted", min = 0)
        int checksMade,

        @Field(meaning = "Electrical checks not made, each check and place counted", min = 0)
        int checksNotMade,

        @Field(meaning = "Fields of loads that were guessed, each load and field counted", min = 0)
        int guessedFields,

        @Field(meaning = "Loads that state no inrush and count as if they had none", min = 0)
        int loadsWithoutInrush,

        @Field(meaning = "Loads without a place, which no figure counts", min = 0)
        int loadsWithoutPlace,

        @Field(meaning = "Running current that they would add to each phase, evenly spread", min = 0, least = 0)
        double withoutPlaceAmps)
        implements AssessmentBuilder.With {
    public Assessment {
        Contract.check(
                Assessment.class,
                headline,
                hardRulesBroken,
                limitsBroken,
                eventsOverLimit,
                checksMade,
                checksNotMade,
                guessedFields,
                loadsWithoutInrush,
                loadsWithoutPlace,
                withoutPlaceAmps);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static AssessmentBuilder builder() {
        return Defaults.into(AssessmentBuilder.unset(), Assessment.class);
    }

    /** Whether a limit is broken, so that nothing is to be built from the plan. */
    public boolean isBroken() {
        return hardRulesBroken + limitsBroken > 0;
    }

    /** Whether nothing is broken, every check was made and no peak of an event passes a limit. */
    public boolean isComplete() {
        return !isBroken() && checksNotMade == 0 && eventsOverLimit == 0;
    }
}
