package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** The wiring between a breaker and its load. */
public record Circuit(
        @Field(meaning = "Length of the cable, one way", min = 0, max = 100_000)
        double lengthMetres) {
    public Circuit {
        Contract.check(Circuit.class, lengthMetres);
    }
}
