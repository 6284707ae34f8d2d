package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** The sag that a load rides through when it is on. */
public record RideThrough(
        @Field(meaning = "Voltage that it needs, of the nominal one", min = 0, max = 100)
        double remainingPercent,

        @Field(meaning = "Time for which it does without", min = 0, max = 600_000, byDefault = "0")
        double withoutMillis) {
    public RideThrough {
        Contract.check(RideThrough.class, remainingPercent, withoutMillis);
    }
}
