package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** The sag that a load rides through when it is on. */
public record RideThrough(
        @Field(meaning = "Voltage that must remain, of the nominal one", min = 0, max = 100)
        double remainingPercent) {
    public RideThrough {
        Contract.check(RideThrough.class, remainingPercent);
    }
}
