import { expect, test } from "vitest";
import { tellingName } from "../../extension/preview/telling-name.ts";

test.each([
  ["file:///shop/one/job.scant", ["file:///shop/one/job.scant", "file:///shop/two/rack.scant"], "job.scant"],
  ["file:///shop/one/job.scant", ["file:///shop/two/job.scant"], "job.scant (one)"],
  ["file:///work%20of%20may/job%20%281%29.scant", ["file:///job%20%281%29.scant"], "job (1).scant (work of may)"],
  ["file:///job.scant", ["file:///two/job.scant"], "job.scant"],
  ["untitled:Untitled-1", ["untitled:Untitled-2"], "Untitled-1"],
  ["file:///100%.scant", [], "100%.scant"],
])("%s beside %s is called %s", (file, open, name) => {
  expect(tellingName(file, open)).toBe(name);
});
