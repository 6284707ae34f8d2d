package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** How cables are laid where a circuit or feeder does not say. */
public record Installation(
        @Field(meaning = "Temperature of the air around cables", min = -50, max = 100, byDefault = "30")
        double ambientCelsius) {
    public Installation {
        Contract.check(Installation.class, ambientCelsius);
    }
}
