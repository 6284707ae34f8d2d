package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One run of conductors: a line conductor for each pole and, where a neutral is used, one of the same size. */
@FileRecord
public record Cable(
        @Field(meaning = "Length, one way", min = 0, max = 100_000)
        double lengthMetres,

        @Field(meaning = "Size of a line conductor: 12 AWG, #12, 1/0 AWG, 250 kcmil, 2.5 mm2", atLeast = 1)
        String size,

        @Field(meaning = "What the conductors are made of", byDefault = "\"copper\"")
        ConductorMaterial material,

        @Field(meaning = "Equal conductors in parallel for each line", min = 1, max = 20, byDefault = "1")
        int sets,

        @Field(meaning = "What surrounds the conductors", byDefault = "\"nonmetallic\"")
        Conduit conduit,

        @Field(meaning = "How it is laid, for sizes in mm2", byDefault = "\"b1\"")
        ReferenceMethod method,

        @Field(
                meaning = "Temperature that conductors and terminals may reach: 60, 75 or 90 for AWG and kcmil, 70 for"
                        + " mm2; when absent 60 up to 100 A and 75 above, or 70",
                min = 50,
                max = 120,
                optional = true)
        OptionalDouble conductorCelsius,

        @Field(
                meaning =
                        "Temperature that the insulation of AWG and kcmil may reach, from which corrections start: 60,"
                                + " 75 or 90; conductor_c when absent",
                min = 50,
                max = 120,
                optional = true)
        OptionalDouble insulationCelsius,

        @Field(
                meaning = "Current-carrying conductors in the same raceway, its own included, for AWG and kcmil; 3 when"
                        + " absent",
                min = 1,
                max = 200,
                optional = true)
        OptionalInt conductorsTogether,

        @Field(
                meaning = "Circuits that are bunched, its own included, for mm2; 1 when absent",
                min = 1,
                max = 20,
                optional = true)
        OptionalInt circuitsTogether,

        @Field(
                meaning = "Temperature of the air around it; of the installation when absent",
                min = -50,
                max = 100,
                optional = true)
        OptionalDouble ambientCelsius,

        @Field(
                meaning = "Size of the protective conductor that runs along, one with each set; the fault loop is not"
                        + " checked when absent",
                atLeast = 1,
                optional = true)
        Optional<String> protectiveSize,

        @Field(
                meaning = "What the protective conductor is made of; the material of the lines when absent",
                optional = true)
        Optional<ConductorMaterial> protectiveMaterial)
        implements CableBuilder.With {
    public Cable {
        Contract.check(
                Cable.class,
                lengthMetres,
                size,
                material,
                sets,
                conduit,
                method,
                conductorCelsius,
                insulationCelsius,
                conductorsTogether,
                circuitsTogether,
                ambientCelsius,
                protectiveSize,
                protectiveMaterial);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static CableBuilder builder() {
        return Defaults.into(CableBuilder.unset(), Cable.class);
    }
}
