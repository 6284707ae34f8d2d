package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** The wiring between the supply and a panel. */
public record Feeder(
        @Field(meaning = "Length of the cable, one way", min = 0, max = 100_000)
        double lengthMetres) {
    public Feeder {
        Contract.check(Feeder.class, lengthMetres);
    }
}
