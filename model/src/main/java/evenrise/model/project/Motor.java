package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.Optional;
import java.util.OptionalDouble;

/** A motor, started across the line. */
public record Motor(
        @Field(meaning = "Rated shaft power in horsepower", above = 0, max = 10_000, optional = true)
        OptionalDouble horsepower,

        @Field(meaning = "Code letter on its nameplate", optional = true)
        Optional<CodeLetter> codeLetter,

        @Field(
                meaning = "Rms line current at locked rotor, by the datasheet",
                above = 0,
                max = 100_000,
                optional = true)
        OptionalDouble lockedRotorAmps) {
    public Motor {
        Contract.check(Motor.class, horsepower, codeLetter, lockedRotorAmps);
    }
}
