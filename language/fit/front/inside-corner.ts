import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { add, largest, less, subtract, zero } from "../../core/rational.ts";
import type { Span } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { pieces } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { CaseModel, FrontModel, Model } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, say } from "../check.ts";

/**
 * Where two cases meet at an inside corner, a front of one must pass the fronts of the other: its edge must stay as far
 * from the corner as they stand out of their faces, and farther still for their pulls.
 */
export const frontMustPassInsideCorner: Check = {
  codes: ["front/inside-corner"],
  run: (context, model) =>
    model.cases.flatMap((one) =>
      one.block.meets.flatMap((corner) => {
        const other = model.cases.find((each) => each.name === corner.with.text);
        return other === undefined || other === one ? [] : bothWays(context, model, one, other, corner);
      }),
    ),
};

type Corner = CaseModel["block"]["meets"][number];

const facing = { left: "right", right: "left" } as const;

function bothWays(
  context: Context,
  model: Model,
  one: CaseModel,
  other: CaseModel,
  corner: Corner,
): readonly Finding[] {
  const mine = endFronts(model, one, corner.side);
  const theirs = endFronts(model, other, facing[corner.side]);
  // A case that says the corner too answers for its own fronts there.
  const saysToo = other.block.meets.some((each) => each.with.text === one.name && each.side === facing[corner.side]);
  return [
    ...strikes(context, one, mine, theirs, corner.side, corner.with.span),
    ...(saysToo ? [] : strikes(context, other, theirs, mine, facing[corner.side], corner.key.span)),
  ];
}

/** A front at the end of a case, and how far its edge is from the case's outside there. */
interface EndFront {
  readonly front: FrontModel;
  readonly clear: Length;
}

function endFronts(model: Model, one: CaseModel, side: "left" | "right"): readonly EndFront[] {
  return model.fronts.flatMap((front) =>
    front.openings.flatMap((opening): readonly EndFront[] => {
      const bound = opening.bounds[side];
      if (opening.case !== one.name || opening.face !== "front" || !bound.outer || bound.member === undefined)
        return [];
      return [{ front, clear: subtract(bound.member.value, front.overlays[side]?.value ?? zero) }];
    }),
  );
}

/** The worst front of one case against what stands out farthest in the other. */
function strikes(
  context: Context,
  home: CaseModel,
  fronts: readonly EndFront[],
  against: readonly EndFront[],
  side: "left" | "right",
  span: Span,
): readonly Finding[] {
  const [first, ...rest] = against;
  const nearest = fronts.reduce<EndFront | undefined>(
    (least, one) => (least === undefined || less(one.clear, least.clear) ? one : least),
    undefined,
  );
  if (first === undefined || nearest === undefined) return [];
  const faces = largest(standsOut(first), ...rest.map(standsOut));
  const pulls = largest(withPulls(context, first), ...rest.map((one) => withPulls(context, one)));
  if (!less(nearest.clear, pulls)) return [];
  const strikesFace = less(nearest.clear, faces);
  const reach = strikesFace ? faces : pulls;
  const lacks = say(context, subtract(pulls, nearest.clear));
  const forPulls = strikesFace && less(faces, pulls) ? "; their pulls pass then too" : "";
  return [
    finding({
      code: "front/inside-corner",
      severity: strikesFace ? "error" : "warning",
      span,
      message: `"${nearest.front.of}" comes within ${say(context, nearest.clear)} of this corner; ${strikesFace ? "the fronts" : "the pulls"} round it stand ${say(context, reach)} out`,
      reason:
        "At an inside corner a drawer or door opens along the faces of the other case, and strikes what stands out of them.",
      remedy:
        home.block.frame === undefined
          ? `Put a filler ${lacks} wide at the ${side} end of "${home.name}"${forPulls}.`
          : `Make the ${side} end of the frame of "${home.name}" ${lacks} wider, or put a filler as wide between the two${forPulls}.`,
      related: [
        { span: nearest.front.block.head, message: "the front that comes near the corner" },
        { span: first.front.block.head, message: "what it must pass" },
      ],
    }),
  ];
}

/** An inset front is flush with its face; any other stands out by its thickness. */
function standsOut({ front }: EndFront): Length {
  return front.whole.inset === undefined ? (front.thickness?.value ?? zero) : zero;
}

function withPulls(context: Context, one: EndFront): Length {
  const { pulls } = one.front.whole;
  const count = pulls === undefined ? 0 : (pieces(context, pulls.value, 12) ?? 0);
  return count === 0 ? standsOut(one) : add(standsOut(one), fallback("pull.stands").value);
}
